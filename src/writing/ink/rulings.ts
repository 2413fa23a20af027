import type { Ruling } from '../written.ts';
import { findPieces } from './pieces.ts';
import type { Ink } from './masks.ts';

/** Letters have no straight runs of this length, flat pixels. */
const SHORTEST_PX = 64;
/** A printed line is no thicker; a letter's stroke that crosses it is. */
const THICKEST_PX = 9;

/** Ink without its rulings, and the rulings: 1 in `mask` where one was taken out. */
export type Parted = { readonly ink: Ink; readonly ruled: Uint8Array; readonly rulings: readonly Ruling[] };

/** Takes printed lines and the sides of boxes out of the ink, so that letters which touch them stay apart. */
export function partRulings(ink: Ink): Parted {
  const { width, height } = ink;
  const ruled = new Uint8Array(ink.mask.length);
  markRuns(ink.mask, ruled, { length: width, count: height, step: 1, next: width });
  markRuns(ink.mask, ruled, { length: height, count: width, step: width, next: 1 });
  const mask = ink.mask.slice();
  for (let k = 0; k < mask.length; k++) if (ruled[k]) mask[k] = 0;
  const rulings = findPieces({ ...ink, mask: ruled })
    .list.filter(({ x0, x1, y0, y1 }) => Math.max(x1 - x0, y1 - y0) >= SHORTEST_PX)
    .flatMap(sidesOf);
  return { ink: { ...ink, mask }, ruled, rulings };
}

/** A line's box is a line; a box drawn in one stroke is four. */
function sidesOf({ x0, x1, y0, y1 }: Ruling): Ruling[] {
  const [w, h] = [x1 - x0, y1 - y0];
  const level = (y: number): Ruling => ({ x0, y0: y, x1, y1: y });
  const upright = (x: number): Ruling => ({ x0: x, y0, x1: x, y1 });
  if (h < 0.2 * w && h < 3 * THICKEST_PX) return [level((y0 + y1) / 2)];
  if (w < 0.2 * h && w < 3 * THICKEST_PX) return [upright((x0 + x1) / 2)];
  return [level(y0), upright(x1), level(y1), upright(x0)];
}

type Walk = { length: number; count: number; step: number; next: number };

/** Marks long runs, one pixel of drift to each side allowed, where the ink across them is thin. */
function markRuns(mask: Uint8Array, ruled: Uint8Array, { length, count, step, next }: Walk): void {
  const isInk = (k: number) => mask[k] === 1 || mask[k - next] === 1 || mask[k + next] === 1;
  for (let n = 1; n < count - 1; n++) {
    let from = -1;
    for (let i = 0; i <= length; i++) {
      const k = n * next + i * step;
      if (i < length && isInk(k)) {
        if (from < 0) from = i;
        continue;
      }
      if (from >= 0 && i - from >= SHORTEST_PX)
        for (let j = from; j < i; j++) markThin(mask, ruled, n * next + j * step, next);
      from = -1;
    }
  }
}

function markThin(mask: Uint8Array, ruled: Uint8Array, k: number, across: number): void {
  if (!mask[k]) return;
  let [a, b] = [k, k];
  while (mask[a - across] && k - a <= THICKEST_PX * across) a -= across;
  while (mask[b + across] && b - k <= THICKEST_PX * across) b += across;
  if ((b - a) / across < THICKEST_PX) for (let i = a; i <= b; i += across) ruled[i] = 1;
}
