import type { TextRow } from '../../../src/readings-sheet/grid/text-rows.ts';
import type { WrittenWord } from '../../../src/readings-sheet/grid/written-words.ts';

/** Height of a figure in these tests, pixels. */
export const DIGIT = 30;

/** A word of figures as wide as figures are, its middle at a place. */
export function wordAt(x: number, cy: number, letters = 3, figures = 0.95): WrittenWord {
  const half = 0.35 * DIGIT * letters;
  return { blots: [], x0: x - half, x1: x + half, y0: cy - DIGIT / 2, y1: cy + DIGIT / 2, cy, letters, figures };
}

/** A row of such words. */
export const rowAt = (y: number, xs: readonly number[], letters = 3, figures = 0.95): TextRow => ({
  y,
  words: xs.map((x) => wordAt(x, y, letters, figures)),
});
