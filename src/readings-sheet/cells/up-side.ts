import { NO_DIGIT, type DigitReader } from '../digits/digit-network.ts';
import type { InkPatch } from '../digits/ink-patch.ts';
import type { SheetInk } from '../ink/sheet-ink.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { patchOf } from './strokes.ts';

/** So many pieces of ink tell which side is up. */
const ASKED = 90;
/** As high or wide as digits are: pixels, and the longer side over the shorter. */
const SMALLEST_PX = 11;
const LARGEST_PX = 70;
const SLIMMEST = 3;

/** Per piece of ink, a side that reads this much worse than the best is not up: logarithm of a likelihood. */
const CLEARLY_WORSE = 0.25;

/**
 * Which side of a table may be up, by how well its digits read: quarter turns to the left, the likeliest first.
 * Threes, fours and sevens read one way only.
 */
export function upSides({ xs, ys }: TableSurface, { field, blots }: SheetInk, read: DigitReader): number[] {
  const [left, right, top, bottom] = [xs[0]!, xs[xs.length - 1]!, ys[0]!, ys[ys.length - 1]!];
  const inside = blots.filter(({ cx, cy }) => cx > left && cx < right && cy > top && cy < bottom);
  const some = inside.filter(({ x0, x1, y0, y1 }) => {
    const [short, long] = [Math.min(x1 - x0, y1 - y0), Math.max(x1 - x0, y1 - y0)];
    return long >= SMALLEST_PX && long <= LARGEST_PX && long < SLIMMEST * short;
  });
  const step = Math.max(1, Math.floor(some.length / ASKED));
  const worth = [0, 0, 0, 0];
  let asked = 0;
  for (let i = 0; i < some.length; i += step) {
    const { x0, x1 } = some[i]!;
    asked++;
    let patch = patchOf({ blots: [some[i]!], x0, x1 }, field);
    for (let quarter = 0; quarter < 4; quarter++, patch = turnedLeft(patch)) {
      const digits = read(patch).subarray(0, NO_DIGIT);
      worth[quarter]! += Math.log(0.02 + Math.max(...digits));
    }
  }
  const least = Math.max(...worth) - CLEARLY_WORSE * asked;
  return [0, 1, 2, 3].filter((quarter) => worth[quarter]! >= least).sort((a, b) => worth[b]! - worth[a]!);
}

function turnedLeft({ width, height, ink }: InkPatch): InkPatch {
  const out = new Float32Array(ink.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) out[(width - 1 - x) * height + y] = ink[y * width + x]!;
  return { width: height, height: width, ink: out };
}
