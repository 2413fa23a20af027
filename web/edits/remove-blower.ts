import type { Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { textsWithout } from '../state/pointer.ts';

/** Takes a candidate away, with the words typed about it. */
export function removeBlower(job: Job, blowerId: string): Edited {
  const index = job.blowers.findIndex((blower) => blower.id === blowerId);
  if (index === -1) return { job, note: 'removeBlower' };
  return {
    job: {
      ...job,
      blowers: job.blowers.filter((_, i) => i !== index),
      asTyped: textsWithout(job.asTyped ?? {}, '/blowers', index),
    },
    note: 'removeBlower',
  };
}
