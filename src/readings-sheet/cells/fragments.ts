import type { Blot } from '../ink/blots.ts';

/** Sizes in usual digit heights: a figure is at least so high, a speck smaller than this. */
const LEAST_DIGIT = 0.5;
const SPECK = 0.15;
/** Further from its number than this, digit heights, a piece is none of it. */
const NEAR = 1.6;
/** What lies over a figure by this share of its own width is a part of that figure. */
const OVER = 0.3;

/**
 * Whether pieces of figures stand high beside a number, where no point does: the rest of those figures was too faint to see.
 * @param blots of the number @param digit usual height of a digit, flat pixels
 */
export function hasFragments(blots: readonly Blot[], digit: number): boolean {
  const tall = blots.filter(({ y0, y1 }) => y1 - y0 >= LEAST_DIGIT * digit);
  if (!tall.length) return false;
  const middle = tall.reduce((sum, { y0, y1 }) => sum + (y0 + y1) / 2, 0) / tall.length;
  return blots.some((b) => {
    const size = Math.max(b.x1 - b.x0, b.y1 - b.y0);
    if (size < SPECK * digit || b.y1 - b.y0 >= LEAST_DIGIT * digit || b.cy > middle) return false;
    const shared = tall.map(({ x0, x1 }) => Math.min(x1, b.x1) - Math.max(x0, b.x0));
    const most = Math.max(...shared);
    return most < OVER * (b.x1 - b.x0) && most > -NEAR * digit;
  });
}
