import type { Piece } from '../ink/pieces.ts';

/** Letters and figures that stand side by side, from left to right, and small marks among them. */
export type Chain = { readonly letters: readonly Piece[]; readonly marks: readonly Piece[] };

const SMALLEST_LETTER_PX = 9;
/** The largest letters, share of the picture's height. */
const LARGEST_LETTER = 0.22;
/** Letters that touch each other are one piece. */
const WIDEST = 5;
/** Blank between letters of one line, and to a mark, shares of the letters' height. */
const WIDEST_GAP = 0.75;
const MARK_GAP = 0.6;
/** A small letter beside a capital, a brace beside a figure. */
const MOST_TIMES_HIGHER = 1.9;
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

/** Chains letters to lines of text. @param height of the picture, pixels */
export function chainLetters(pieces: readonly Piece[], height: number): Chain[] {
  const isSharp = sharpnessTest(pieces.filter((p) => isLetter(p, height)));
  const sharp = pieces.filter(isSharp);
  const letters = sharp.filter((p) => isLetter(p, height)).sort((a, b) => a.x0 - b.x0);
  const groups = groupNeighbours(letters);
  const small = sharp.filter((p) => !isLetter(p, height) && isMark(p));
  return groups.map((group) => withMarks(group, small));
}

function isLetter({ x0, y0, x1, y1, area }: Piece, height: number): boolean {
  const [w, h] = [x1 - x0, y1 - y0];
  return h >= SMALLEST_LETTER_PX && h <= LARGEST_LETTER * height && w <= WIDEST * h && area >= 0.09 * w * h && w >= 2;
}

const isMark = ({ x0, y0, x1, y1, area }: Piece) => area >= 4 && Math.max(x1 - x0, y1 - y0) <= 40;

function groupNeighbours(letters: readonly Piece[]): Piece[][] {
  const parent = letters.map((_, i) => i);
  const root = (i: number): number => (parent[i] === i ? i : (parent[i] = root(parent[i]!)));
  for (let i = 0; i < letters.length; i++) {
    const a = letters[i]!;
    const reach = a.x1 + 2 * (a.y1 - a.y0);
    for (let j = i + 1; j < letters.length && letters[j]!.x0 <= reach; j++)
      if (areNeighbours(a, letters[j]!)) parent[root(j)] = root(i);
  }
  const groups = new Map<number, Piece[]>();
  letters.forEach((piece, i) => groups.set(root(i), [...(groups.get(root(i)) ?? []), piece]));
  return [...groups.values()];
}

function areNeighbours(a: Piece, b: Piece): boolean {
  const [ha, hb] = [a.y1 - a.y0, b.y1 - b.y0];
  const shared = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  const [low, high] = [Math.min(ha, hb), Math.max(ha, hb)];
  return shared >= 0.6 * low && high <= MOST_TIMES_HIGHER * low && b.x0 - a.x1 <= WIDEST_GAP * high;
}

/** Points, commas, dashes and accents near a line's letters. */
function withMarks(letters: Piece[], small: readonly Piece[]): Chain {
  const high = letters.map((p) => p.y1 - p.y0).sort((a, b) => a - b)[(letters.length * 0.7) | 0]!;
  const near = small.filter(
    (p) =>
      Math.max(p.y1 - p.y0, 0.6 * (p.x1 - p.x0)) < 0.75 * high &&
      letters.some(
        (l) =>
          Math.max(l.x0 - p.x1, p.x0 - l.x1) <= MARK_GAP * high &&
          p.y0 > l.y0 - 0.45 * high &&
          p.y1 < l.y1 + 0.45 * high,
      ),
  );
  return { letters, marks: near };
}
