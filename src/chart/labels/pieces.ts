import { faintLines, printLevel, type Printed } from './faint-lines.ts';
import type { Box } from './surroundings.ts';

/** A connected piece of ink: its box (x1, y1 just outside), its pixels. */
export type Piece = {
  readonly id: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly area: number;
};

/** All pieces, and for every pixel the number of its piece (0 for paper). */
export type Pieces = { readonly list: readonly Piece[]; readonly labels: Int32Array };

/** Share of the darkest ink around that still is ink. */
const SHARE = 0.36;
const LEAST_INK = 13;
/** Far from any print the darkest there is grain, show-through and the finest lines of the paper: a share of the chart's print. */
const LEAST_SHARE = 0.15;
const CELL = 32;

/**
 * Cuts the ink into connected pieces (eight neighbours), by runs along the rows. The frame's own lines and those of the
 * paper are no part of any.
 */
export function findPieces(all: Printed): Pieces {
  const { width, height, frame } = all;
  const ink = withoutFrame(all.ink, width, frame);
  const print = printLevel(all);
  const faint = faintLines(all, print);
  for (let i = 0; i < faint.length; i++) if (faint[i]) ink[i] = 0;
  const thresholds = localThresholds(ink, width, height, Math.max(LEAST_INK, LEAST_SHARE * print));
  const columns = Math.ceil(width / CELL);
  const labels = new Int32Array(width * height);
  const parent: number[] = [0];
  const root = (a: number): number => {
    while (parent[a] !== a) a = parent[a] = parent[parent[a]!]!;
    return a;
  };
  for (let y = 1; y < height - 1; y++) {
    const row = Math.floor(y / CELL) * columns;
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
      if (ink[i]! < thresholds[row + (x >> 5)]!) continue;
      let label = labels[i - 1]!;
      // two pieces can only meet here through the pixel above to the right
      const above = labels[i - width]!;
      const aboveLeft = labels[i - width - 1]!;
      const aboveRight = labels[i - width + 1]!;
      for (const other of [above, aboveLeft, aboveRight]) {
        if (!other || other === label) continue;
        if (!label) label = other;
        else {
          const a = root(label);
          const b = root(other);
          if (a !== b) parent[Math.max(a, b)] = Math.min(a, b);
        }
        if (other === above) break;
      }
      if (!label) {
        label = parent.length;
        parent.push(label);
      }
      labels[i] = label;
    }
  }
  const list = collect(labels, parent, root, width, height);
  for (let i = 0; i < faint.length; i++) if (faint[i]) labels[i] = NOT_TEXT;
  onFrame(width, frame, (i) => (labels[i] = NOT_TEXT));
  return { list, labels };
}

/** What lines are numbered that are no part of a piece. */
export const NOT_TEXT = -1;

/** Half the width of a frame line, and a little for paper that bends. */
export const FRAME_LINE = 3;

/** Takes the frame's own lines out, so that what touches them stays apart. */
function withoutFrame(printed: Uint8Array, width: number, frame: Box): Uint8Array {
  const ink = printed.slice();
  onFrame(width, frame, (i) => (ink[i] = 0));
  return ink;
}

function onFrame(width: number, { x0, y0, x1, y1 }: Box, at: (index: number) => void): void {
  for (let d = -FRAME_LINE; d <= FRAME_LINE; d++) {
    for (const y of [y0 + d, y1 + d]) for (let x = x0 - FRAME_LINE; x <= x1 + FRAME_LINE; x++) at(y * width + x);
    for (const x of [x0 + d, x1 + d]) for (let y = y0; y < y1; y++) at(y * width + x);
  }
}

function collect(
  labels: Int32Array,
  parent: readonly number[],
  root: (a: number) => number,
  width: number,
  height: number,
): Piece[] {
  const n = parent.length;
  const number = new Int32Array(n);
  let count = 0;
  for (let k = 1; k < n; k++) {
    const r = root(k);
    if (!number[r]) number[r] = ++count;
    number[k] = number[r]!;
  }
  const x0 = new Int32Array(count + 1).fill(width);
  const y0 = new Int32Array(count + 1).fill(height);
  const x1 = new Int32Array(count + 1);
  const y1 = new Int32Array(count + 1);
  const area = new Int32Array(count + 1);
  for (let y = 1; y < height - 1; y++)
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
      if (!labels[i]) continue;
      const k = number[labels[i]!]!;
      labels[i] = k;
      area[k]!++;
      if (x < x0[k]!) x0[k] = x;
      if (x >= x1[k]!) x1[k] = x + 1;
      if (y < y0[k]!) y0[k] = y;
      if (y >= y1[k]!) y1[k] = y + 1;
    }
  const list: Piece[] = [];
  for (let k = 1; k <= count; k++)
    if (area[k]! > 2) list.push({ id: k, x0: x0[k]!, y0: y0[k]!, x1: x1[k]!, y1: y1[k]!, area: area[k]! });
  return list;
}

/** For each cell, a share of what is nearly the darkest ink in it and the cells around it. */
function localThresholds(ink: Uint8Array, width: number, height: number, least: number): Float32Array {
  const columns = Math.ceil(width / CELL);
  const rows = Math.ceil(height / CELL);
  const dark = new Float32Array(columns * rows);
  const counts = new Uint16Array(256);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      counts.fill(0);
      for (let y = r * CELL; y < Math.min(height, (r + 1) * CELL); y++)
        for (let x = c * CELL, i = y * width + x; x < Math.min(width, (c + 1) * CELL); x++, i++) counts[ink[i]!]!++;
      let left = 0.02 * CELL * CELL;
      let level = 255;
      while (level > 0 && (left -= counts[level]!) > 0) level--;
      dark[r * columns + c] = level;
    }
  return dark.map((own, k) => {
    const r = Math.floor(k / columns);
    const c = k % columns;
    let sum = own;
    let n = 1;
    for (let y = Math.max(0, r - 1); y <= Math.min(rows - 1, r + 1); y++)
      for (let x = Math.max(0, c - 1); x <= Math.min(columns - 1, c + 1); x++)
        if (dark[y * columns + x]! > 30) {
          sum += dark[y * columns + x]!;
          n++;
        }
    return Math.max(least, SHARE * Math.max(own, (0.75 * sum) / n));
  });
}
