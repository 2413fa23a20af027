import type { Piece } from '../ink/pieces.ts';
import { sharpnessTest } from '../ink/sharpness.ts';
import type { TextLine } from './text-lines.ts';

/** How far a line is carried on over ink that is no letter of its own, shares of the capitals' height. */
const FARTHEST = 2.4;
/** Blank after which nothing belongs to the line any more. */
const WIDEST_GAP = 0.5;
/** A column with so much ink between base line and top of the capitals may be part of a letter. */
const LEAST_INK = 0.1;
/** What has grown together with a letter is larger than one. */
const LARGER = 1.15;

/**
 * Carries a line on where a scratch, dirt or a frame has grown together with its first or last letter: the reader of
 * words may know it from the grey picture all the same.
 */
export function reachedOn(line: TextLine, width: number): TextLine {
  const { labels, list } = line.pieces;
  const high = line.y1 - line.y0;
  const isSharp = sharpnessTest(line.letters);
  const isGrown = (p: Piece) => Math.max(p.x1 - p.x0, p.y1 - p.y0) > LARGER * high && p.x1 - p.x0 > 0.3 * high;
  const middle = (line.x0 + line.x1) / 2;
  const inkAt = (x: number): number => {
    const fall = line.slope * (x - middle);
    let count = 0;
    for (let y = Math.round(line.y0 + fall); y < line.y1 + fall; y++) {
      const id = labels[y * width + x]!;
      const piece = list[id - 1];
      if (piece && isGrown(piece) && isSharp(piece)) count++;
    }
    return count / high;
  };
  const end = (from: number, step: 1 | -1): number => {
    let last = from;
    for (let x = from; Math.abs(x - from) < FARTHEST * high; x += step) {
      if (x < 0 || x >= width || Math.abs(x - last) > WIDEST_GAP * high) break;
      if (inkAt(x) >= LEAST_INK) last = x;
    }
    return last;
  };
  return { ...line, x0: end(Math.round(line.x0), -1), x1: end(Math.round(line.x1), 1) };
}
