import type { Surroundings } from './surroundings.ts';

/** A line runs on for this share of the frame's longer side; no stroke of a letter is so long. */
const LONG = 0.05;
/** Specks of paper in a line that do not end it, pixels. */
const GAP = 2;
/** Print stands in the darkest hundredth of what lies in and around a plot; labels stand so far outside of it. */
const PRINT_SHARE = 0.01;
const AROUND = 0.1;
/** Lines the chart is drawn over are at most this share as dark as its print; fainter than the lower share is no line. */
const FAINT = 0.5;
const FAINTEST = 0.08;
const LEAST_INK = 8;

/** Ink laid flat, and where the frame lies in it. */
export type Printed = Pick<Surroundings, 'ink' | 'width' | 'height' | 'frame'>;

/**
 * The lines of the paper itself: graph paper, or a pale grid, long and much fainter than what is printed on it. Labels
 * that touch them would hang together with them else.
 * @param print ink of the chart's print, see `printLevel`
 * @returns 1 where such a line runs and nothing darker stands on it
 */
export function faintLines({ ink, width, height, frame }: Printed, print: number): Uint8Array {
  const lines = new Uint8Array(ink.length);
  const least = Math.max(LEAST_INK, FAINTEST * print);
  const most = FAINT * print;
  if (most <= least) return lines;
  const long = LONG * Math.max(frame.x1 - frame.x0, frame.y1 - frame.y0);
  // across a line the next pixels count too: paper bends by less than that in the length of a run
  const mark = (start: number, count: number, step: number, across: number): void => {
    let from = 0;
    let to = -1;
    for (let k = 0; k <= count; k++) {
      const i = start + k * step;
      if (k < count && (ink[i]! >= least || ink[i - across]! >= least || ink[i + across]! >= least)) {
        to = k;
        continue;
      }
      if (k < count && to >= from && k - to <= GAP) continue;
      if (to - from > long)
        for (let m = from; m <= to; m++) if (ink[start + m * step]! < most) lines[start + m * step] = 1;
      from = k + 1;
      to = k;
    }
  };
  for (let y = 1; y < height - 1; y++) mark(y * width, width, 1, width);
  for (let x = 1; x < width - 1; x++) mark(width + x, height - 2, width, 1);
  return lines;
}

/** Ink of what is printed in and around a frame, 0..255. */
export function printLevel({ ink, width, height, frame: { x0, y0, x1, y1 } }: Printed): number {
  const [mx, my] = [Math.round(AROUND * (x1 - x0)), Math.round(AROUND * (y1 - y0))];
  const counts = new Uint32Array(256);
  let n = 0;
  for (let y = Math.max(0, y0 - my); y < Math.min(height, y1 + my); y++)
    for (let x = Math.max(0, x0 - mx); x < Math.min(width, x1 + mx); x++, n++) counts[ink[y * width + x]!]!++;
  let left = PRINT_SHARE * n;
  let level = 255;
  while (level > 0 && (left -= counts[level]!) > 0) level--;
  return level;
}
