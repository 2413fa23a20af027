import { fieldLike } from '../crop/filters.ts';
import { inkOf } from '../ink/masks.ts';
import { findPieces, type Piece } from '../ink/pieces.ts';
import { sharpnessTest } from '../ink/sharpness.ts';
import type { View } from './view.ts';

/** A piece of ink that looks like a letter in company: its middle and longer side, view pixels, and how sharp it is. */
export type LetterPlace = { readonly x: number; readonly y: number; readonly size: number; readonly weight: number };

const LOWEST_PX = 6;
const HIGHEST_SHARE = 0.12;

/**
 * Where on a photo letters may stand, lying any way round: sharp pieces of ink with others of their size close by.
 * The grain of a casting and fins of a motor give few of them.
 */
export function lettersOn(view: View): LetterPlace[] {
  const { width, height, colours } = view;
  const [r, g, b] = colours;
  const grey = fieldLike({ width, height, values: r }, (k) => (3 * r[k]! + 4 * g[k]! + b[k]!) / 8);
  const inks = inkOf(grey, 14);
  return [inks.dark, inks.light].flatMap((ink) => {
    const shaped = findPieces(ink).list.filter((p) => isLetter(p, height));
    const letters = shaped.filter(sharpnessTest(shaped)).sort((a, c) => a.x0 - c.x0);
    return letters
      .filter((_, i) => companions(letters, i) >= 2)
      .map((p) => ({ x: (p.x0 + p.x1) / 2, y: (p.y0 + p.y1) / 2, size: sizeOf(p), weight: p.edge }));
  });
}

const sizeOf = ({ x0, y0, x1, y1 }: Piece) => Math.max(x1 - x0, y1 - y0);

function isLetter(p: Piece, height: number): boolean {
  const [w, h] = [p.x1 - p.x0, p.y1 - p.y0];
  return (
    sizeOf(p) >= LOWEST_PX &&
    sizeOf(p) <= HIGHEST_SHARE * height &&
    sizeOf(p) < 6 * Math.min(w, h) &&
    p.area > 0.15 * w * h
  );
}

/** Pieces of about the same size within twice its size. */
function companions(letters: readonly Piece[], i: number): number {
  const p = letters[i]!;
  const size = sizeOf(p);
  let count = 0;
  for (const step of [-1, 1])
    for (let j = i + step; j >= 0 && j < letters.length; j += step) {
      const q = letters[j]!;
      if (Math.abs(q.x0 - p.x0) > 4 * size) break;
      const other = sizeOf(q);
      if (other > 1.5 * size || size > 1.5 * other) continue;
      if (Math.hypot((q.x0 + q.x1 - p.x0 - p.x1) / 2, (q.y0 + q.y1 - p.y0 - p.y1) / 2) < 2 * size) count++;
    }
  return count;
}
