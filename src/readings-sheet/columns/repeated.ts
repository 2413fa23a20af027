import type { Weighed } from './weigh-column.ts';

/** A ditto mark is taken for what it is this surely. */
const SURE_DITTO = 0.985;

/** Puts the value above wherever a ditto mark stands. @param isDitto whether the cell holds one, row by row */
export function repeated(column: readonly (Weighed | null)[], isDitto: readonly boolean[]): (Weighed | null)[] {
  const out: (Weighed | null)[] = [];
  column.forEach((own, row) => {
    const above = out[row - 1] ?? null;
    out.push(isDitto[row] && above ? { ...above, chance: above.chance * SURE_DITTO } : own);
  });
  return out;
}
