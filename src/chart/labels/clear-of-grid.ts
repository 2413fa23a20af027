import { findPieces, NOT_TEXT, type Pieces } from './pieces.ts';
import type { Surroundings } from './surroundings.ts';

/** Lines of a grid run on for so many letter heights; the strokes of letters never do. */
const LONG = 3;
/** A stroke of a letter goes on from a line for this share of the letter's height. */
const STROKE = 0.25;
/** How the long run through a pixel goes. */
const LEVEL = 1;
const UPRIGHT = 2;
const CROSSING = 3;

/**
 * The pieces of ink in the frame once its grid is taken away: letters that touch a grid line hang together with it
 * else. Lines may be bent by a pixel in the length of a word.
 * @param pieces those of all ink
 * @param size height of letters, pixels
 */
export function piecesClearOfGrid(all: Surroundings, pieces: Pieces, size: number): Pieces {
  const { width, frame } = all;
  const { labels } = pieces;
  const runs = new Uint8Array(all.ink.length);
  const long = LONG * size;
  const inkAt = (i: number, across: number): boolean =>
    labels[i]! > 0 || labels[i - across]! > 0 || labels[i + across]! > 0;
  const mark = (from: number, count: number, step: number, across: number, as: number): void => {
    let start = 0;
    for (let k = 0; k <= count; k++) {
      if (k < count && inkAt(from + k * step, across)) continue;
      if (k - start > long) for (let m = start; m < k; m++) runs[from + m * step]! |= as;
      start = k + 1;
    }
  };
  for (let y = frame.y0 + 1; y < frame.y1; y++) mark(y * width + frame.x0, frame.x1 - frame.x0, 1, width, LEVEL);
  for (let x = frame.x0 + 1; x < frame.x1; x++) mark(frame.y0 * width + x, frame.y1 - frame.y0, width, 1, UPRIGHT);
  const reach = Math.max(4, Math.round(STROKE * size));
  /** a stroke of a letter stands on the line, hangs from it or crosses it */
  const hasStroke = (i: number, across: number): boolean =>
    [-across, across].some((step) => {
      for (let k = 1; k <= reach; k++)
        if (!(labels[i + k * step]! > 0) || runs[i + k * step] === CROSSING) return false;
      return true;
    });
  const isLine = (i: number): boolean =>
    runs[i] === CROSSING || (runs[i]! > 0 && !hasStroke(i, runs[i] === LEVEL ? width : 1));
  const ink = new Uint8Array(all.ink.length);
  const lines: number[] = [];
  for (let y = frame.y0; y < frame.y1; y++)
    for (let i = y * width + frame.x0, end = y * width + frame.x1; i < end; i++)
      if (isLine(i)) lines.push(i);
      else ink[i] = all.ink[i]!;
  const clear = findPieces({ ...all, ink });
  for (const i of lines) if (labels[i]! > 0) clear.labels[i] = NOT_TEXT;
  return clear;
}
