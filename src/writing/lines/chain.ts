import type { Piece } from '../ink/pieces.ts';
import { joinedAcross } from './across-marks.ts';
import { sharpnessTest } from '../ink/sharpness.ts';

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
const DOT = 0.3;
const DOT_GAP = 0.33;
/** Letters with a mark between them stand no farther apart. */
const ACROSS_MARK = 1.9;
/** So many letters side by side are text; fewer that are so many times higher than text are dirt. */
const SURELY_TEXT = 4;
const BLOT = 2;
/** Figures of this share of the height are raised ones. */
const RAISED = 0.7;
/** Beside sharp letters half their sharpness is enough, where top and base line fit. */
const FAINT = 0.5;
const FAINT_GAP = 0.5;
const OFF_LINE = 0.16;
/** A small letter beside a capital, a brace beside a figure. */
const MOST_TIMES_HIGHER = 1.9;
/** Chains letters to lines of text. @param height of the picture, pixels */
export function chainLetters(pieces: readonly Piece[], height: number): Chain[] {
  const isSharp = sharpnessTest(pieces.filter((p) => isLetter(p, height)));
  const letters = pieces.filter((p) => isLetter(p, height) && isSharp(p)).sort((a, b) => a.x0 - b.x0);
  const fainter = pieces.filter((p) => isSharp({ ...p, edge: p.edge / FAINT }));
  const faint = fainter.filter((p) => isLetter(p, height) && !isSharp(p));
  const small = fainter.filter((p) => !isLetter(p, height) && isMark(p));
  const ink = { faint, faintMarks: small.filter((p) => !isSharp(p)) };
  const sharpMarks = small.filter(isSharp);
  const groups = groupNeighbours(letters);
  // the highest letters first: a tilde, a raised figure is their mark and no line of its own
  const high = groups.map((group) => ({ group, high: heightOf(group) })).sort((a, b) => b.high - a.high);
  const usual = usualHeight(groups);
  const taken = new Set<Piece>();
  const chains: Chain[] = [];
  for (const { group, high: own } of high) {
    if (group.every((p) => taken.has(p))) continue;
    // a blot of dirt takes no letters for its marks
    const isBlot = group.length < SURELY_TEXT && own > BLOT * usual;
    const raised = isBlot
      ? []
      : high.filter((o) => o.group.length <= 2 && o.high < RAISED * own).flatMap((o) => o.group);
    const { letters: whole, marks } = grown(group, own, [...sharpMarks, ...raised], ink);
    marks.forEach((p) => taken.add(p));
    chains.push({ letters: whole, marks });
  }
  const lone = groups.flatMap((group) => (group.length === 1 ? group : []));
  return joinedAcross(joined(chains), [...sharpMarks, ...lone]);
}

/** Two pieces of a line with one mark between them are one line: «3~ Mot.». Leaders of dots join nothing. */
function joined(chains: readonly Chain[]): Chain[] {
  const out: Chain[] = [];
  for (const chain of chains) {
    const marks = new Set(chain.marks);
    const at = out.findIndex((other) => other.marks.some((p) => marks.has(p)) && isOneLine(other, chain));
    if (at < 0) out.push(chain);
    else
      out[at] = {
        letters: [...out[at]!.letters, ...chain.letters].sort((a, b) => a.x0 - b.x0),
        marks: [...new Set([...out[at]!.marks, ...chain.marks])],
      };
  }
  return out;
}

function isOneLine(a: Chain, b: Chain): boolean {
  const [ha, hb] = [heightOf(a.letters), heightOf(b.letters)];
  const high = Math.max(ha, hb);
  return a.letters.some((p) =>
    b.letters.some(
      (q) =>
        Math.max(p.x0 - q.x1, q.x0 - p.x1) < ACROSS_MARK * high &&
        Math.abs(p.y1 - q.y1) < 0.5 * high &&
        high < MOST_TIMES_HIGHER * Math.min(ha, hb),
    ),
  );
}

/** Height of the letters of lines that are surely text, the middle one of all. */
function usualHeight(groups: readonly (readonly Piece[])[]): number {
  const heights = groups.filter((group) => group.length >= SURELY_TEXT).map(heightOf);
  return heights.sort((a, b) => a - b)[heights.length >> 1] ?? Infinity;
}

/** What most letters of a line do not exceed. */
const heightOf = (letters: readonly Piece[]): number =>
  letters.map((p) => p.y1 - p.y0).sort((a, b) => a - b)[(letters.length * 0.7) | 0]!;

function isLetter({ x0, y0, x1, y1, area }: Piece, height: number): boolean {
  const [w, h] = [x1 - x0, y1 - y0];
  return h >= SMALLEST_LETTER_PX && h <= LARGEST_LETTER * height && w <= WIDEST * h && area >= 0.09 * w * h && w >= 2;
}

const isMark = ({ x0, y0, x1, y1, area }: Piece) => area >= 4 && Math.max(x1 - x0, y1 - y0) <= 40;

/** How often a line reaches on from what was just added to it: a tilde after a figure, a raised figure after its sign. */
const ROUNDS = 3;

/** A line with what belongs to it: fainter letters as high as its own on its base line, and marks. */
function grown(
  letters: readonly Piece[],
  high: number,
  small: readonly Piece[],
  { faint, faintMarks }: { readonly faint: readonly Piece[]; readonly faintMarks: readonly Piece[] },
): Chain {
  const whole = new Set(letters);
  const marks = new Set<Piece>();
  const tall = letters.filter((l) => l.y1 - l.y0 > 0.8 * high);
  // leaders of dots stand farther from a line than its own points do
  const gapOf = (p: Piece) => (Math.max(p.x1 - p.x0, p.y1 - p.y0) < DOT * high ? DOT_GAP : MARK_GAP);
  for (let round = 0; round < ROUNDS; round++) {
    const all = [...whole, ...marks];
    const isClose = (p: Piece, gap: number) => all.some((l) => Math.max(l.x0 - p.x1, p.x0 - l.x1) <= gap * high);
    for (const p of small) if (isSmall(p, high) && isBeside(p, letters, high) && isClose(p, gapOf(p))) marks.add(p);
    const isOnLine = (p: Piece) =>
      tall.some((l) => Math.abs(l.y0 - p.y0) < OFF_LINE * high && Math.abs(l.y1 - p.y1) < OFF_LINE * high);
    for (const p of faint) if (letters.length > 1 && isOnLine(p) && isClose(p, FAINT_GAP)) whole.add(p);
  }
  const [left, right] = [Math.min(...[...whole].map((p) => p.x0)), Math.max(...[...whole].map((p) => p.x1))];
  // a faint speck beside a line may be anything, between its figures it may be a point
  for (const p of faintMarks)
    if (p.x0 > left && p.x1 < right && isSmall(p, high) && isBeside(p, letters, high)) marks.add(p);
  return { letters: [...whole].sort((a, b) => a.x0 - b.x0), marks: [...marks] };
}

const isSmall = (p: Piece, high: number) => Math.max(p.y1 - p.y0, 0.6 * (p.x1 - p.x0)) < 0.75 * high;

/** At the height of the letters nearest to it. */
function isBeside(p: Piece, letters: readonly Piece[], high: number): boolean {
  const away = (l: Piece) => Math.max(l.x0 - p.x1, p.x0 - l.x1, 0);
  const l = letters.reduce((a, b) => (away(b) < away(a) ? b : a));
  return p.y0 > l.y0 - 0.45 * high && p.y1 < l.y1 + 0.45 * high;
}

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
