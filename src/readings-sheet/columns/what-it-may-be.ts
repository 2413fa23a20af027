import type { Spelling } from '../cells/read-number.ts';
import type { ColumnQuantity } from '../quantities.ts';
import { mostCommon } from './most-common.ts';

/** Enough numbers to tell whether they count, and the share of them that must. */
const ENOUGH = 4;
const COUNTING = 0.5;
/** Numbers that do not even go as a count does this often count nothing. */
const HARDLY = 0.25;

/**
 * What the readings of a column say of its quantity before its name is believed: numbers that count the rows are no
 * percentages, and those that do not are no count. @param cells spellings of each row, best first
 */
export function mayBeOf(cells: readonly (readonly Spelling[])[]): (quantity: ColumnQuantity) => boolean {
  const firsts = cells.flatMap(([best], row) => (best ? [Number(best.text) - row] : []));
  if (firsts.length < ENOUGH) return () => true;
  const share = (mostCommon(firsts)?.count ?? 0) / firsts.length;
  return (quantity) => (quantity === 'opening' ? share > HARDLY : quantity === 'opening_pct' ? share < COUNTING : true);
}
