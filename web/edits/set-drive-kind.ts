import type { Drive, Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';

/** Belt or direct. Pulleys stay noted when a belt is taken away by mistake: undo is not the only way back. */
export const setDriveKind = (job: Job, data: { blowerId: string; kind: Drive['kind'] }): Edited => ({
  job: {
    ...job,
    blowers: job.blowers.map((b) => (b.id === data.blowerId ? { ...b, drive: { ...b.drive, kind: data.kind } } : b)),
  },
  note: 'drive',
});
