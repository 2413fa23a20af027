import type { Evidence, Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';

/** Adds one piece of evidence to a blower; the bare `wheel` gives way, because every curve starts from the wheel anyway. */
export function addEvidence(job: Job, data: { blowerId: string; evidence: Evidence }): Edited & { index: number } {
  let index = -1;
  const blowers = job.blowers.map((blower) => {
    if (blower.id !== data.blowerId) return blower;
    const kept = blower.evidence.length === 1 && blower.evidence[0]?.kind === 'wheel' ? [] : blower.evidence;
    index = kept.length;
    return { ...blower, evidence: [...kept, data.evidence] };
  });
  return { job: { ...job, blowers }, note: data.evidence.kind === 'chart' ? 'chart' : 'evidence', index };
}
