import type { Assessment, FanCurve } from '../../src/assessment.ts';
import type { Issue, Warning } from '../../src/issues/result.ts';
import type { Blower, Job, Site, Supply } from '../../src/job/types.ts';

export type WorkerQuestion =
  | { kind: 'assess'; job: Job }
  | { kind: 'check'; raw: unknown }
  | { kind: 'curve'; request: { site: Site; supply?: Supply; blower: Blower } };

export type WorkerAnswer =
  | { kind: 'assessment'; job: Job; assessment: Assessment }
  | { kind: 'issues'; issues: Issue[] }
  | { kind: 'job'; job: Job }
  | { kind: 'curve'; curve: FanCurve; warnings: Warning[] }
  | { kind: 'trouble'; detail: string };
