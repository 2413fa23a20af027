import type { Ruling } from '../written.ts';
import { findPieces, type Piece, type Pieces } from './pieces.ts';
import type { Ink } from './masks.ts';

/** Letters have no straight runs of this length, flat pixels, across and down. */
const SHORTEST_PX = { level: 64, upright: 100 };
/** The side of a box is shorter; it ends at a level line at one end, or at both. */
const BOX_SIDE_PX = { oneEnd: 60, bothEnds: 36 };
const ENDS_WITHIN_PX = 5;
/** Its sides are compared with it at this distance. */
const BESIDE_PX = 3;
const AROUND_PX = [8, 14, 20, 28, 36, 44];
/** Letters cover no more of the ground. */
const GROUND = 0.2;
const LEAST_STEP = 2;
const ONE_SIDED = 0.3;
/** Cross strokes of neighbouring letters make short lines, and much of those is thick. */
const LONG_PX = 160;
const THIN_SHARE = { short: 0.85, long: 0.55 };
const SHARPEST = 4;
const SHARE_OF_SHARPEST = 0.4;
const LEAST_EDGE = 2;
/** A printed line is no thicker; a letter's stroke that crosses it is. */
const THICKEST_PX = 13;

/** Ink without its rulings, and the rulings: 1 in `mask` where one was taken out. */
export type Parted = { readonly ink: Ink; readonly ruled: Uint8Array; readonly rulings: readonly Ruling[] };

/** Takes printed lines and the sides of boxes out of the ink, so that letters which touch them stay apart. */
export function partRulings(ink: Ink, grey: Float32Array): Parted {
  const { width, height, mask } = ink;
  const level = runsOf(mask, { length: width, count: height, step: 1, next: width }, (run) => run >= SHORTEST_PX.level);
  const isLevel = (k: number) => level.along[k] === 1;
  const upright = runsOf(mask, { length: height, count: width, step: width, next: 1 }, (run, first, last) => {
    if (run < BOX_SIDE_PX.bothEnds) return false;
    if (run >= SHORTEST_PX.upright) return true;
    const near = (k: number, way: 1 | -1) =>
      Array.from({ length: 2 * ENDS_WITHIN_PX }, (_, d) => k + way * (d - ENDS_WITHIN_PX) * width).some(isLevel);
    const ends = Number(near(first, -1)) + Number(near(last, 1));
    return ends > 0 && run >= (ends === 1 ? BOX_SIDE_PX.oneEnd : BOX_SIDE_PX.bothEnds);
  });
  const lines = [level, upright].map(({ along }) => findPieces({ ...ink, mask: along }));
  const thinLines = [level, upright].map(({ thin }, i) =>
    mostlyThin(lines[i]!, thin, (i === 0 ? upright : level).along).filter((line) =>
      standsOut(line, i === 0 ? 'level' : 'upright', grey, width, height),
    ),
  );
  const isClear = clearness(thinLines.flat());
  const kept = thinLines.map((list, i) => {
    const isKept = new Uint8Array(lines[i]!.list.length + 1);
    for (const line of list) if (isClear(line)) isKept[line.id] = 1;
    return isKept;
  });
  const ruled = new Uint8Array(mask.length);
  for (let k = 0; k < ruled.length; k++) {
    const isAcross = kept[0]![lines[0]!.labels[k]!] === 1;
    const isDown = kept[1]![lines[1]!.labels[k]!] === 1;
    // where two lines cross both are thick
    if ((isAcross && level.thin[k]) || (isDown && upright.thin[k]) || (isAcross && isDown)) ruled[k] = 1;
  }
  return {
    ink: { ...ink, mask: mask.map((v, k) => v & ~ruled[k]!) },
    ruled,
    rulings: thinLines.flat().filter(isClear).map(asRuling),
  };
}

/**
 * Lines letters stand on are thick where they do; the bright strip beside a line of dark text is thick nearly everywhere.
 * @param crossing 1 where a line of the other direction runs: at the corners of a box both are thick
 */
function mostlyThin({ list, labels }: Pieces, thin: Uint8Array, crossing: Uint8Array): Piece[] {
  const count = new Int32Array(list.length + 1);
  const corners = new Int32Array(list.length + 1);
  for (let k = 0; k < thin.length; k++) {
    if (thin[k]) count[labels[k]!]!++;
    else if (crossing[k]) corners[labels[k]!]!++;
  }
  return list.filter(({ id, area, x0, x1, y0, y1 }) => {
    const share = Math.max(x1 - x0, y1 - y0) < LONG_PX ? THIN_SHARE.short : THIN_SHARE.long;
    return count[id]! > share * (area - corners[id]!);
  });
}

/** A line differs from the ground on both its sides; the bright strip beside dark text does on one. */
function standsOut(line: Piece, run: 'level' | 'upright', grey: Float32Array, width: number, height: number): boolean {
  const { x0, x1, y0, y1 } = line;
  const [from, to, low, high] = run === 'level' ? [x0, x1, y0, y1] : [y0, y1, x0, x1];
  const at = (i: number, j: number) =>
    run === 'level'
      ? grey[Math.min(height - 1, Math.max(0, j)) * width + i]!
      : grey[i * width + Math.min(width - 1, Math.max(0, j))]!;
  const steps: [number[], number[]] = [[], []];
  const around: number[] = [];
  const owns: number[] = [];
  for (let i = from; i < to; i += 4) {
    let sum = 0;
    for (let j = low; j < high; j++) sum += at(i, j);
    const own = sum / (high - low);
    owns.push(own);
    for (const away of AROUND_PX) around.push(at(i, low - away), at(i, high - 1 + away));
    steps[0].push(own - (at(i, low - BESIDE_PX) + at(i, low - BESIDE_PX - 1)) / 2);
    steps[1].push(own - (at(i, high + BESIDE_PX) + at(i, high + BESIDE_PX - 1)) / 2);
  }
  // a gap between letters has letters on both sides, and the brightness of the ground
  around.sort((p, q) => p - q);
  const own = owns.sort((p, q) => p - q)[owns.length >> 1]!;
  const share = (q: number) => around[Math.floor(q * (around.length - 1))]!;
  if (own < share(1 - GROUND) + LEAST_STEP && own > share(GROUND) - LEAST_STEP) return false;
  const [a, b] = steps.map((some) => some.sort((p, q) => p - q)[some.length >> 1]!) as [number, number];
  return (
    a * b > 0 &&
    Math.min(Math.abs(a), Math.abs(b)) > Math.max(LEAST_STEP, ONE_SIDED * Math.max(Math.abs(a), Math.abs(b)))
  );
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

/** Long runs, one pixel of drift to each side allowed: all of them, and where the ink across them is thin. */
function runsOf(
  mask: Uint8Array,
  { length, count, step, next }: Walk,
  isLong: (run: number, first: number, last: number) => boolean,
): { along: Uint8Array; thin: Uint8Array } {
  const [along, thin] = [new Uint8Array(mask.length), new Uint8Array(mask.length)];
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
        for (let j = from; j < i; j++) markAcross(mask, along, thin, n * next + j * step, next);
      from = -1;
    }
  }
  return { along, thin };
}

function markAcross(mask: Uint8Array, along: Uint8Array, thin: Uint8Array, k: number, across: number): void {
  if (!mask[k] || thin[k]) return;
  along[k] = 1;
  let [a, b] = [k, k];
  while (mask[a - across] && k - a <= THICKEST_PX * across) a -= across;
  while (mask[b + across] && b - k <= THICKEST_PX * across) b += across;
  if ((b - a) / across < THICKEST_PX) for (let i = a; i <= b; i += across) along[i] = thin[i] = 1;
}
