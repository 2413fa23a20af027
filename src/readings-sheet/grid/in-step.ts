import { pitchOf } from './body-rows.ts';
import type { TextRow } from './text-rows.ts';

/** A step off a whole number of usual ones by this share costs as much as one figure is worth. */
const OFF = 0.2;
/** So does a row that is passed over. */
const PASSED = 1;
/** No row is worth more than this many figures: a single full row must not pay for two in wrong places. */
const MOST_WORTH = 12;

/**
 * Leaves out what stands between rows in step: bits of a fold, of a stain, of figures cut in two. Of all choices of rows
 * the one that keeps most figures and keeps step best.
 * Source: R. Bellman, Dynamic programming (1957).
 */
export function inStep(rows: readonly TextRow[]): TextRow[] {
  const pitch = pitchOf(rows);
  if (rows.length < 3 || pitch <= 0) return [...rows];
  const worth = rows.map(({ words }) =>
    Math.min(
      MOST_WORTH,
      words.reduce((sum, { letters, figures }) => sum + letters * figures, 0),
    ),
  );
  const best: { sum: number; before: number }[] = [];
  rows.forEach((row, i) => {
    let here = { sum: worth[i]!, before: -1 };
    for (let k = 0; k < i; k++) {
      const step = (row.y - rows[k]!.y) / pitch;
      const whole = Math.max(1, Math.round(step));
      const sum = best[k]!.sum + worth[i]! - ((step - whole) / OFF) ** 2 - PASSED * (whole - 1);
      if (sum > here.sum) here = { sum, before: k };
    }
    best.push(here);
  });
  const kept: TextRow[] = [];
  const sums = best.map(({ sum }) => sum);
  for (let i = sums.indexOf(Math.max(...sums)); i >= 0; i = best[i]!.before) kept.unshift(rows[i]!);
  return kept;
}
