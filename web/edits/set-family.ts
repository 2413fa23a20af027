import type { Family } from '../../src/fan/families.ts';
import type { Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';

/** The kind of blades, as seen on the picture that was tapped. */
export const setFamily = (job: Job, data: { blowerId: string; family: Family }): Edited => ({
  job: {
    ...job,
    blowers: job.blowers.map((b) =>
      b.id === data.blowerId ? { ...b, wheel: { ...b.wheel, family: data.family } } : b,
    ),
  },
  note: 'wheel',
});
