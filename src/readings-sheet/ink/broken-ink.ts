import type { Blot } from './blots.ts';

/** Smaller pieces are specks, larger ones no part of a figure: pixels, flat pixels. */
const LEAST_PIXELS = 12;
const LARGEST_PX = 120;
/** Pieces of one figure stand over each other by this share of the narrower one, and are not this many times each other. */
const OVER = 0.15;
const UNLIKE = 4;
/** So many pieces have another that reaches into them where figures are printed in dots; in a hand few have. */
const BROKEN = 0.14;

/** Whether figures are in pieces, as needles print them: whether many pieces of ink reach into each other without touching. */
export function isBroken(blots: readonly Blot[]): boolean {
  const pieces = blots.filter(
    ({ x0, x1, y0, y1, pixels }) => pixels.length >= LEAST_PIXELS && Math.max(x1 - x0, y1 - y0) < LARGEST_PX,
  );
  return pieces.filter((a) => pieces.some((b) => b !== a && reachIn(a, b))).length > BROKEN * pieces.length;
}

function reachIn(a: Blot, b: Blot): boolean {
  const shared = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
  const sizes = [a.pixels.length, b.pixels.length];
  return (
    shared > OVER * Math.min(a.x1 - a.x0, b.x1 - b.x0) &&
    Math.min(a.y1, b.y1) >= Math.max(a.y0, b.y0) &&
    Math.max(...sizes) < UNLIKE * Math.min(...sizes)
  );
}
