import type { Job } from '../../src/job/types.ts';
import { signed } from '../forms/suction-sign.ts';
import { readQuantity } from '../forms/quantity-text.ts';
import type { Edited } from '../state/job.ts';
import type { HalfTyped } from '../state/doc.ts';
import { withValueAt } from '../state/pointer.ts';
import type { Column } from './columns.ts';
import { readList } from './list-text.ts';

/**
 * A row being typed has no place in the job before its tube reading can be read: until then its cells are half-typed texts
 * at the pointers they will have.
 */
export function rowFromTexts(
  job: Job,
  rowPath: string,
  columns: readonly Column[],
  texts: HalfTyped,
  unitOf: (column: Column) => string,
): (Edited & { taken: string[] }) | null {
  const read = columns.flatMap((column) => {
    const path = `${rowPath}/${column.field}`;
    const text = texts[path];
    if (text === undefined) return [];
    const value = valueOf(column, text, unitOf(column));
    return value === null ? [] : [{ path, text, field: column.field, value }];
  });
  if (!read.some(({ field }) => field === 'staticPressure_Pa')) return null;
  const row = Object.fromEntries(read.map(({ field, value }) => [field, value]));
  const asTyped = { ...job.asTyped, ...Object.fromEntries(read.map(({ path, text }) => [path, text])) };
  return { job: { ...withValueAt(job, rowPath, row), asTyped }, note: 'row', taken: read.map(({ path }) => path) };
}

function valueOf(column: Column, text: string, unit: string): number | number[] | null {
  if (column.list) return readList(text, column.quantity, unit);
  const read = readQuantity(text, column.quantity, unit);
  return read.ok ? signed(read.si, column.sign) : null;
}
