import { pitchOf } from './body-rows.ts';
import type { TextRow } from './text-rows.ts';

/** Sides of the rows from the top, and for each row whether it may be missed, doubled or in a wrong place. */
export type RowSides = { readonly ys: readonly number[]; readonly isDoubtful: readonly boolean[] };

/** A ruling is between two rows when it keeps this far from their middles, shares of the step between them. */
const CLEAR = 0.25;
/** Rows are ruled when this share of the steps between them has one ruling in it, and hardly any more. */
const RULED = 0.7;
/** A step off the usual by more than this share tells that a row was missed or doubled. */
const UNEVEN = 0.3;

/**
 * Parts the rows of readings: by the rulings between them, else half way. Where rows are ruled, what lies between two
 * rulings is a row even when nothing could be seen in it.
 * @param rulings level ones, drawn, flat pixels
 */
export function rowSides(rows: readonly TextRow[], rulings: readonly number[]): RowSides {
  const pitch = pitchOf(rows) || 1;
  const steps = rows.slice(1).map((row, i) => ({ above: rows[i]!.y, below: row.y, step: row.y - rows[i]!.y }));
  const between = steps.map(({ above, below }) => {
    const keep = CLEAR * Math.min(pitch, below - above);
    return rulings.filter((y) => y > above + keep && y < below - keep);
  });
  const ones = between.filter((list) => list.length === 1).length;
  const isRuled = steps.length > 0 && ones >= RULED * steps.length;
  const first = rows[0]!.y - 0.5 * pitch;
  const last = rows.at(-1)!.y + 0.5 * pitch;
  const near = (at: number) =>
    rulings.filter((y) => Math.abs(y - at) < 0.4 * pitch).toSorted((a, b) => Math.abs(a - at) - Math.abs(b - at))[0];
  const ys = [near(first) ?? first];
  const isDoubtful: boolean[] = [];
  steps.forEach(({ above, below, step }, i) => {
    const own = between[i]!;
    const missed = Math.max(0, Math.round(step / pitch) - 1);
    const isEven = Math.abs(step / pitch - 1) < UNEVEN;
    if (missed && isRuled && own.length === missed + 1) {
      // the sides of rows in which nothing was seen
      ys.push(...own);
      isDoubtful.push(false, ...Array.from({ length: missed }, () => true));
      return;
    }
    ys.push(own.length === 1 ? own[0]! : (above + below) / 2);
    isDoubtful.push(!isEven);
  });
  ys.push(near(last) ?? last);
  isDoubtful.push(false);
  return { ys, isDoubtful };
}
