import type { Ruling } from '../written.ts';
import { findPieces, type Piece } from './pieces.ts';
import type { Ink } from './masks.ts';

/** Letters have no straight runs of this length, flat pixels, across and down. */
const SHORTEST_PX = { level: 64, upright: 100 };
/** The side of a box is shorter; it ends at a level line at one end, or at both. */
const BOX_SIDE_PX = { oneEnd: 60, bothEnds: 36 };
const ENDS_WITHIN_PX = 5;
const SHARPEST = 4;
const SHARE_OF_SHARPEST = 0.4;
const LEAST_EDGE = 2;
/** A printed line is no thicker; a letter's stroke that crosses it is. */
const THICKEST_PX = 13;

/** Ink without its rulings, and the rulings: 1 in `mask` where one was taken out. */
export type Parted = { readonly ink: Ink; readonly ruled: Uint8Array; readonly rulings: readonly Ruling[] };

/** Takes printed lines and the sides of boxes out of the ink, so that letters which touch them stay apart. */
export function partRulings(ink: Ink): Parted {
  const { width, height } = ink;
  const level = new Uint8Array(ink.mask.length);
  const upright = new Uint8Array(ink.mask.length);
  const isLevel = (k: number) => level[k] === 1;
  markRuns(ink.mask, level, { length: width, count: height, step: 1, next: width }, (run) => run >= SHORTEST_PX.level);
  markRuns(ink.mask, upright, { length: height, count: width, step: width, next: 1 }, (run, first, last) => {
    const near = (k: number, way: 1 | -1) =>
      Array.from({ length: 2 * ENDS_WITHIN_PX }, (_, d) => k + way * (d - ENDS_WITHIN_PX) * width).some(isLevel);
    const ends = Number(near(first, -1)) + Number(near(last, 1));
    return run >= [SHORTEST_PX.upright, BOX_SIDE_PX.oneEnd, BOX_SIDE_PX.bothEnds][ends]!;
  });
  const lines = [level, upright].map((some) => findPieces({ ...ink, mask: some }));
  const isClear = clearness(lines.flatMap(({ list }) => list));
  const ruled = new Uint8Array(ink.mask.length);
  for (const { list, labels } of lines) {
    const kept = Uint8Array.from([0, ...list.map((line) => Number(isClear(line)))]);
    for (let k = 0; k < ruled.length; k++) if (kept[labels[k]!]) ruled[k] = 1;
  }
  const mask = ink.mask.map((v, k) => v & ~ruled[k]!);
  const rulings = lines.flatMap(({ list }) => list.filter(isClear).map(asRuling));
  return { ink: { ...ink, mask }, ruled, rulings };
}

/** Brushed metal is full of faint lines: those far from as sharp as the sharpest are none. */
function clearness(lines: readonly Piece[]): (line: Piece) => boolean {
  const edges = lines.map(({ edge }) => edge).sort((a, b) => b - a);
  const sharp = edges[Math.min(SHARPEST, edges.length) - 1] ?? 0;
  return ({ edge, x0, x1, y0, y1 }) =>
    edge >= Math.max(LEAST_EDGE, SHARE_OF_SHARPEST * sharp) && Math.max(x1 - x0, y1 - y0) >= BOX_SIDE_PX.bothEnds;
}

function asRuling({ x0, x1, y0, y1 }: Piece): Ruling {
  const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
  return x1 - x0 > y1 - y0 ? { x0, x1, y0: y, y1: y } : { x0: x, x1: x, y0, y1 };
}

type Walk = { length: number; count: number; step: number; next: number };

/** Marks long runs, one pixel of drift to each side allowed, where the ink across them is thin. */
function markRuns(
  mask: Uint8Array,
  ruled: Uint8Array,
  { length, count, step, next }: Walk,
  isLong: (run: number, first: number, last: number) => boolean,
): void {
  const isInk = (k: number) => mask[k] === 1 || mask[k - next] === 1 || mask[k + next] === 1;
  for (let n = 1; n < count - 1; n++) {
    let from = -1;
    for (let i = 0; i <= length; i++) {
      const k = n * next + i * step;
      if (i < length && isInk(k)) {
        if (from < 0) from = i;
        continue;
      }
      if (from >= 0 && isLong(i - from, n * next + from * step, k - step))
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
