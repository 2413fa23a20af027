import { applyPatch } from 'fast-json-patch';
import type { Operation } from 'fast-json-patch';
import type { Remedy } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';

/** Puts a remedy's change into the job; what people typed for the changed values no longer holds and is forgotten. */
export function applyRemedy(job: Job, remedy: Pick<Remedy, 'change'>): Edited {
  const changed = applyPatch(structuredClone(job), structuredClone(remedy.change) as Operation[]).newDocument;
  const touched = remedy.change.map((operation) => operation.path);
  const asTyped = Object.fromEntries(
    Object.entries(changed.asTyped ?? {}).filter(
      ([pointer]) => !touched.some((path) => pointer === path || pointer.startsWith(`${path}/`)),
    ),
  );
  return { job: { ...changed, asTyped }, note: 'remedy' };
}
