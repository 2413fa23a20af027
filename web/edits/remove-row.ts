import type { Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { textsWithout, valueAt, withValueAt } from '../state/pointer.ts';

/** Takes one reading out of a test; `rowsPath` is the pointer of the rows. */
export function removeRow(job: Job, data: { rowsPath: string; index: number }): Edited {
  const rows = (valueAt(job, data.rowsPath) as unknown[] | undefined) ?? [];
  const next = withValueAt(
    job,
    data.rowsPath,
    rows.filter((_, i) => i !== data.index),
  );
  return { job: { ...next, asTyped: textsWithout(next.asTyped ?? {}, data.rowsPath, data.index) }, note: 'removeRow' };
}
