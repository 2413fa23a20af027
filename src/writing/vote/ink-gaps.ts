import type { InkBox, InkWitness } from './ink-witness.ts';

/** A gap between two neighbouring pieces of a line's ink: its middle, crop pixels; its width and that of the slimmer letter, capital heights. */
type Gap = { readonly x: number; readonly width: number; readonly slimmer: number };

/** A blank is this wide at least, and so many times as wide as most gaps of its line. */
const LEAST = 0.28;
const TIMES_USUAL = 2.6;
/** In letters of one width an i or a 1 stands alone: beside slim pieces only a gap this wide is a blank. */
const SLIM = 0.3;
const BESIDE_SLIM = 0.6;
/** Fewer gaps do not say what is usual. */
const ENOUGH = 2;

/** A piece this high is a letter, and no mark. */
const HIGH = 0.6;

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
  const least = ({ slimmer }: Gap) => Math.max(slimmer < SLIM ? BESIDE_SLIM : LEAST, TIMES_USUAL * usual);
  return (from, to) => gaps.some((gap) => gap.x > from && gap.x < to && gap.width > least(gap));
}

function gapsAmong(pieces: readonly InkBox[], capital_px: number): Gap[] {
  const sorted = [...pieces].sort((a, b) => a.x0 - b.x0);
  let end = sorted[0]?.x1 ?? 0;
  return sorted.slice(1).map(({ x0, x1 }, i) => {
    const before = sorted[i]!;
    const widths = [sorted[i + 1]!, before].filter((p) => p.y1 - p.y0 > HIGH * capital_px).map((p) => p.x1 - p.x0);
    const slimmer = Math.min(...widths, Infinity) / capital_px;
    const gap = { x: (end + x0) / 2, width: (x0 - end) / capital_px, slimmer };
    end = Math.max(end, x1);
    return gap;
  });
}
