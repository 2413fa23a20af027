import type { Piece, Pieces } from '../ink/pieces.ts';
import type { TextBox } from '../surface.ts';
import type { Chain } from './chain.ts';

/** A line of text with the pieces of ink it is made of. */
export type TextLine = TextBox & Chain & { readonly worth: number; readonly pieces: Pieces };

/** Fewer letters than this tell little of how a line runs. */
const ENOUGH_LETTERS = 5;
const STEEPEST = 0.25;

/**
 * Where a chain of letters stands: base line and top of the capitals follow the tall letters.
 * @param known how lines here run, where the chain is too short to tell
 */
export function lineOf(chain: Chain, pieces: Pieces, isLight: boolean, known?: number): TextLine {
  const { letters, marks } = chain;
  const heights = letters.map((p) => p.y1 - p.y0).sort((a, b) => a - b);
  const capital = heights[Math.floor(0.75 * (heights.length - 1) + 0.5)]!;
  const tall = letters.filter((p) => Math.abs(p.y1 - p.y0 - capital) < 0.2 * capital);
  const all = [...letters, ...marks];
  const x0 = Math.min(...all.map((p) => p.x0));
  const x1 = Math.max(...all.map((p) => p.x1));
  const slope = known ?? slopeOf(tall);
  const middle = (x0 + x1) / 2;
  const at = (p: Piece, y: number) => y - slope * ((p.x0 + p.x1) / 2 - middle);
  const edge = letters.reduce((s, p) => s + p.edge, 0) / letters.length;
  return {
    ...chain,
    pieces,
    isLight,
    x0,
    x1,
    slope,
    y0: median(tall.map((p) => at(p, p.y0))),
    y1: median(tall.map((p) => at(p, p.y1))),
    worth: edge * Math.sqrt(letters.length),
  };
}

/** Median of the slopes between letters, tops, middles and bottoms. Source: P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379. */
function slopeOf(letters: readonly Piece[]): number {
  const slopes: number[] = [];
  letters.forEach((a, i) =>
    letters.slice(i + 1).forEach((b) => {
      const across = (b.x0 + b.x1 - a.x0 - a.x1) / 2;
      if (Math.abs(across) < a.y1 - a.y0) return;
      slopes.push((b.y0 - a.y0) / across, (b.y1 - a.y1) / across);
    }),
  );
  if (!slopes.length) return 0;
  const damped = median(slopes) * Math.min(1, letters.length / ENOUGH_LETTERS);
  return Math.abs(damped) > STEEPEST ? 0 : damped;
}

const median = (numbers: number[]): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
};
