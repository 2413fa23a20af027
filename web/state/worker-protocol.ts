import type { Assessment } from '../../src/assessment.ts';
import type { CurveRequest, EvidencePoint, Influence } from '../../src/index.ts';
import type { Issue } from '../../src/issues/result.ts';
import type { Job } from '../../src/job/types.ts';

/**
 * `judge` is quick; `advise` also looks for what to measure and what to change, which takes its time.
 * `points`: the finds as points on the plot of their curve are wanted too.
 */
export type WorkerQuestion =
  | { kind: 'judge'; job: Job; points: boolean }
  | { kind: 'advise'; job: Job }
  | { kind: 'influence'; request: CurveRequest; flow_m3_s: number }
  | { kind: 'check'; raw: unknown };

export type PointsByBlower = Record<string, EvidencePoint[]>;

export type WorkerAnswer =
  | { kind: 'assessment'; job: Job; assessment: Assessment; points: PointsByBlower }
  | { kind: 'influence'; influence: Influence[] }
  | { kind: 'issues'; issues: Issue[] }
  | { kind: 'job'; job: Job }
  | { kind: 'trouble'; detail: string };
