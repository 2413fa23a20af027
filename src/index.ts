/** The core's public list: the only door for server and page. */
export { assess } from './assess.ts';
export { judge } from './judge.ts';
export { curveOf } from './blower-curve.ts';
export { influenceOfEvidence, type Influence } from './influence.ts';
export { evidencePoints, type EvidencePoint } from './evidence-points.ts';
export { checkCurveRequest, checkJob, type CurveRequest } from './job/check.ts';
export { understand } from './job/understand.ts';
export { jobJsonSchema } from './job/json-schema.ts';
export type * from './assessment.ts';
export type * from './job/types.ts';
export type { Issue, Result, Warning } from './issues/result.ts';
