import type { CellContent } from '../cells/cell-content.ts';
import type { Weighed } from './weigh-column.ts';

/** A ditto mark, and a mark that may be one, are taken for it this surely. */
const SURE = 0.985;
const GUESSED = 0.5;
/** Of two numbers in one cell neither is sure. */
const ONE_OF_TWO = 0.5;

/** What the cells' other marks say: the value above wherever a ditto mark stands, doubt where two numbers stand. @param contents what the column's cells hold, row by row */
export function repeated(column: readonly (Weighed | null)[], contents: readonly CellContent[]): (Weighed | null)[] {
  const out: (Weighed | null)[] = [];
  column.forEach((own, row) => {
    const content = contents[row]!;
    const above = out[row - 1] ?? null;
    if (content.kind === 'ditto' && above)
      out.push({ ...above, chance: above.chance * (content.isSure ? SURE : GUESSED) });
    else
      out.push(own && content.kind === 'number' && !content.isOne ? { ...own, chance: own.chance * ONE_OF_TWO } : own);
  });
  return out;
}
