import type { InkBox, InkWitness } from './ink-witness.ts';

/** A gap between two neighbouring pieces of a line's ink: its middle, crop pixels, and its width, capital heights. */
type Gap = { readonly x: number; readonly width: number };

/** A blank is this wide at least, and so many times as wide as most gaps of its line. */
const LEAST = 0.28;
const TIMES_USUAL = 2.6;
/** Fewer gaps do not say what is usual. */
const ENOUGH = 2;

/**
 * Tells blanks that the readings ran over: of `INS F` in narrow letters they make one word.
 * @param capital_px height of the capitals in the crop
 * @returns whether the ink shows a blank between two places of the crop, pixels
 */
export function blanksIn({ letters, marks }: InkWitness, capital_px: number): (from: number, to: number) => boolean {
  const gaps = gapsAmong([...letters, ...marks], capital_px);
  if (gaps.length < ENOUGH) return () => false;
  const widths = gaps.map(({ width }) => Math.max(0, width)).sort((a, b) => a - b);
  const usual = widths[(widths.length - 1) >> 1]!;
  return (from, to) => gaps.some(({ x, width }) => x > from && x < to && width > Math.max(LEAST, TIMES_USUAL * usual));
}

function gapsAmong(pieces: readonly InkBox[], capital_px: number): Gap[] {
  const sorted = [...pieces].sort((a, b) => a.x0 - b.x0);
  let end = sorted[0]?.x1 ?? 0;
  return sorted.slice(1).map(({ x0, x1 }) => {
    const gap = { x: (end + x0) / 2, width: (x0 - end) / capital_px };
    end = Math.max(end, x1);
    return gap;
  });
}
