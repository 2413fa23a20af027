import type { Piece } from './pieces.ts';

/** The border of ink is steeper than the ground's grain and shades: steps of grey a pixel, share of the deviation. */
const LEAST_EDGE = 5;
const EDGE_SHARE = 0.5;
const MOST_DEVIATION = 44;
/** In a blurred picture, where even its sharpest letters are not that steep, this share of theirs is enough. */
const SHARE_OF_SHARPEST = 0.45;
const SHARPEST = 15;
const NOISE_EDGE = 1.5;

/**
 * Tells ink with a border as sharp as print has in this picture from dirt, shade and grain.
 * @param letters pieces of ink, only those that could be letters
 */
export function sharpnessTest(letters: readonly Piece[]): (piece: Piece) => boolean {
  const relative = ({ edge, deviation }: Piece) => edge / Math.min(MOST_DEVIATION, deviation);
  const least = Math.min(
    LEAST_EDGE,
    Math.max(NOISE_EDGE, SHARE_OF_SHARPEST * sharpestOf(letters.map(({ edge }) => edge))),
  );
  const clear = letters.filter(({ edge }) => edge >= least);
  const share = Math.min(EDGE_SHARE, SHARE_OF_SHARPEST * sharpestOf(clear.map(relative)));
  return (piece) => piece.edge >= least && relative(piece) >= share;
}

const sharpestOf = (edges: readonly number[]): number =>
  [...edges].sort((a, b) => b - a)[Math.min(SHARPEST, edges.length) - 1] ?? 0;
