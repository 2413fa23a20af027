import type { Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { textsWithout } from '../state/pointer.ts';

/** Takes one piece of evidence away; the last one leaves the wheel behind, which is never unknown. */
export function removeEvidence(job: Job, data: { blowerId: string; index: number }): Edited {
  const at = job.blowers.findIndex((blower) => blower.id === data.blowerId);
  const blower = job.blowers[at];
  if (!blower) return { job, note: 'removeEvidence' };
  const left = blower.evidence.filter((_, i) => i !== data.index);
  const evidence = left.length > 0 ? left : [{ kind: 'wheel' as const }];
  return {
    job: {
      ...job,
      blowers: job.blowers.map((b) => (b === blower ? { ...b, evidence } : b)),
      asTyped: textsWithout(job.asTyped ?? {}, `/blowers/${at}/evidence`, data.index),
    },
    note: 'removeEvidence',
  };
}
