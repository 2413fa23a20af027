import type { Ruling } from '../written.ts';
import { findPieces } from './pieces.ts';
import type { Ink } from './masks.ts';

/** Letters have no straight runs of this length, flat pixels. */
const SHORTEST_PX = 64;
/** A printed line is no thicker; a letter's stroke that crosses it is. */
const THICKEST_PX = 13;

/** Ink without its rulings, and the rulings: 1 in `mask` where one was taken out. */
export type Parted = { readonly ink: Ink; readonly ruled: Uint8Array; readonly rulings: readonly Ruling[] };

/** Takes printed lines and the sides of boxes out of the ink, so that letters which touch them stay apart. */
export function partRulings(ink: Ink): Parted {
  const { width, height } = ink;
  const level = new Uint8Array(ink.mask.length);
  const upright = new Uint8Array(ink.mask.length);
  markRuns(ink.mask, level, { length: width, count: height, step: 1, next: width });
  markRuns(ink.mask, upright, { length: height, count: width, step: width, next: 1 });
  const ruled = level.map((v, k) => v | upright[k]!);
  const mask = ink.mask.map((v, k) => v & ~ruled[k]!);
  const along = (some: Uint8Array) => findPieces({ ...ink, mask: some }).list;
  const rulings = [
    ...along(level)
      .filter(({ x0, x1 }) => x1 - x0 >= SHORTEST_PX)
      .map(({ x0, x1, y0, y1 }) => ({ x0, x1, y0: (y0 + y1) / 2, y1: (y0 + y1) / 2 })),
    ...along(upright)
      .filter(({ y0, y1 }) => y1 - y0 >= SHORTEST_PX)
      .map(({ x0, x1, y0, y1 }) => ({ x0: (x0 + x1) / 2, x1: (x0 + x1) / 2, y0, y1 })),
  ];
  return { ink: { ...ink, mask }, ruled, rulings };
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
