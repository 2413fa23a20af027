import { middleOf } from '../../numeric/middle-of.ts';
import { uprightLetters } from './upright-lines.ts';
import { FRAME_LINE, type Piece } from './pieces.ts';
import type { Box, Surroundings } from './surroundings.ts';

/** Which way a piece of text runs in the laid-out picture: `level` from left to right, `upright` from bottom to top or back. */
export type Run = 'level' | 'upright';

/** A word: pieces next to each other, in the order they are read in (upright: from the bottom up). */
export type Word = Box & { readonly run: Run; readonly pieces: readonly Piece[]; readonly size: number };

/** Gap inside a word, share of the letters' height. */
const WORD_GAP = 0.62;
/** Gap between the words of a line. */
export const LINE_GAP = 1.25;
const BROKEN_GAP = 0.42;

/** Size of letters that can be told apart, pixels of the laid-out picture. */
const SMALLEST = 7;
const LARGEST_SHARE = 0.07;

/**
 * Chains letter-like pieces to words, along the rows and along the columns; a piece goes to the longer of its two
 * chains. Points, commas and dashes join the word they lie in.
 */
export function chainWords({ frame }: Pick<Surroundings, 'frame'>, all: readonly Piece[]): Word[] {
  const pieces = all.filter((p) => !isTick(p, frame));
  const largest = LARGEST_SHARE * Math.max(frame.x1 - frame.x0, frame.y1 - frame.y0);
  const letters = pieces.filter((p) => isLetter(p, largest));
  const isIn = new Set(letters);
  const isInside = letters.map((p) => isInFrame(p, frame));
  const points = pieces.filter((p) => !isIn.has(p) && isPoint(p));
  const level = link(
    letters.map((p): Span => [p.x0, p.x1, p.y0, p.y1]),
    points.map((p): Span => [p.x0, p.x1, p.y0, p.y1]),
  );
  const uprightSpans = letters.map((p): Span => [p.y0, p.y1, p.x0, p.x1]);
  const upright = link(uprightSpans, [], rowsOfLetters(uprightSpans));
  const size = (of: Int32Array) => {
    const counts = new Map<number, number>();
    for (const g of of) counts.set(g, (counts.get(g) ?? 0) + 1);
    return counts;
  };
  const levelSize = size(level);
  const uprightSize = size(upright);
  const groups = new Map<string, Piece[]>();
  const longer = letters.map((_, i) => uprightSize.get(upright[i]!)! > levelSize.get(level[i]!)!);
  const isUpright = uprightLetters(letters, level, upright, longer, (i) => !isInside[i]);
  letters.forEach((p, i) => {
    // no word runs across the frame: a label outside and a marker inside only stand in a row
    const key = `${isUpright[i] ? `u${upright[i]}` : `l${level[i]}`} ${isInside[i]}`;
    const group = groups.get(key);
    if (group) group.push(p);
    else groups.set(key, [p]);
  });
  // a comma of large figures is as large as a small letter: what stands alone may be a mark of a word beside it
  const alone = [...groups.values()].flatMap(([only, another]) => (only && !another && isMark(only) ? [only] : []));
  const small = pieces.filter((p) => Math.max(p.x1 - p.x0, p.y1 - p.y0) < largest && !isIn.has(p));
  const byRow = smallByRow([...small, ...alone]);
  const words: Word[] = [];
  for (const [key, group] of groups) {
    const run: Run = key.startsWith('u') ? 'upright' : 'level';
    words.push(withMarks(run, group, byRow));
  }
  const marks = new Set(words.flatMap(({ pieces: [first, ...rest] }) => (rest.length ? [first!, ...rest] : [])));
  const own = words.filter(({ pieces: [first, another] }) => another || !marks.has(first!));
  // thin strokes break a figure in two, and with it the word
  return joinLines(own, frame, BROKEN_GAP);
}

/** Larger marks than this, pixels, would be letters of their own. */
const LARGEST_MARK = 2 * SMALLEST;
const isMark = (p: Piece): boolean => Math.max(p.x1 - p.x0, p.y1 - p.y0) < LARGEST_MARK;

/** A thin piece that grows out of the frame. */
function isTick(p: Piece, { x0, y0, x1, y1 }: Box): boolean {
  const near = FRAME_LINE + 2;
  const level = p.y1 - p.y0 < SMALLEST;
  const upright = p.x1 - p.x0 < SMALLEST;
  const beside = (a: number, b: number, side: number) => a < side + near && b > side - near;
  return (
    (level && (beside(p.x0, p.x1, x0) || beside(p.x0, p.x1, x1))) ||
    (upright && (beside(p.y0, p.y1, y0) || beside(p.y0, p.y1, y1)))
  );
}

/** A decimal point stands between digits that are too far apart to be linked without it. */
const isPoint = (p: Piece): boolean => Math.max(p.x1 - p.x0, p.y1 - p.y0) < SMALLEST && p.area > 3;

function isLetter(p: Piece, largest: number): boolean {
  const w = p.x1 - p.x0;
  const h = p.y1 - p.y0;
  const long = Math.max(w, h);
  const short = Math.min(w, h);
  if (long < SMALLEST) return false;
  // letters that touch make wide pieces, but none is higher than a letter may be
  return short <= largest && long <= 6 * largest && long <= Math.max(26, 14 * short) && p.area > 0.1 * w * h;
}

/** A box as it lies along and across the run: from, to, and the same across. */
type Span = readonly [number, number, number, number];

/** Letters that touch make a piece so many times longer than high, which is as high as a letter and as long as several. */
const TOUCHING = 2.4;
const LETTER_HIGH = 0.6;
const SEVERAL_LONG = 2;

/** Which pieces are several letters that touch, in a row across the run: no letters of one that goes along it. */
function rowsOfLetters(spans: readonly Span[]): boolean[] {
  const usual = middleOf(spans.map(([a, b, c, d]) => Math.max(b - a, d - c)));
  return spans.map(([a, b, c, d]) => {
    const [high, long] = [b - a, d - c];
    return long > TOUCHING * high && high > LETTER_HIGH * usual && long > SEVERAL_LONG * usual;
  });
}

/**
 * Unites boxes that follow each other along the run and overlap across it; answers each one's group.
 * @param points small marks that may bridge a gap where they lie at the base line
 * @param apart boxes that follow none
 */
function link(boxes: readonly Span[], points: readonly Span[] = [], apart: readonly boolean[] = []): Int32Array {
  const all = [...boxes, ...points];
  const order = all.map((_, i) => i).sort((a, b) => all[a]![0] - all[b]![0]);
  const group = Int32Array.from(all, (_, i) => i);
  const root = (a: number): number => {
    while (group[a] !== a) a = group[a] = group[group[a]!]!;
    return a;
  };
  const tallest = Math.max(0, ...boxes.map((b) => b[3] - b[2]));
  for (let k = 0; k < order.length; k++) {
    const i = order[k]!;
    for (let m = k + 1; m < order.length; m++) {
      const j = order[m]!;
      if (all[j]![0] - all[i]![1] > WORD_GAP * tallest) break;
      if ((i >= boxes.length && j >= boxes.length) || apart[i] || apart[j]) continue;
      const isPoint = i >= boxes.length || j >= boxes.length;
      const follows = isPoint ? pointFollows : letterFollows;
      if (follows(all[i]!, all[j]!)) group[root(j)] = root(i);
    }
  }
  return group.map((_, i) => root(i)).slice(0, boxes.length);
}

function letterFollows(a: Span, b: Span): boolean {
  const [ha, hb] = [a[3] - a[2], b[3] - b[2]];
  const [high, low] = [Math.max(ha, hb), Math.min(ha, hb)];
  // a comma or a raised figure is much smaller than its neighbours, and may hang below the line
  const isMark = high > 2.1 * low;
  if (high > 3.4 * low || b[0] - a[1] > WORD_GAP * (isMark ? high : 1.15 * low)) return false;
  if (isMark && Math.max(b[1] - b[0], b[3] - b[2]) > 0.75 * high && hb < ha) return false;
  return Math.min(a[3], b[3]) - Math.max(a[2], b[2]) >= (isMark ? -0.12 * high : 0.45 * low);
}

function pointFollows(a: Span, b: Span): boolean {
  const [letter, point] = a[3] - a[2] > b[3] - b[2] ? [a, b] : [b, a];
  const high = letter[3] - letter[2];
  if (high < SMALLEST || b[0] - a[1] > 0.42 * high || point[3] - point[2] > 0.4 * high) return false;
  const middle = (point[2] + point[3]) / 2;
  return middle > letter[3] - 0.25 * high && middle < letter[3] + 0.25 * high;
}

const ROW = 32;

function smallByRow(small: readonly Piece[]): Map<number, Piece[]> {
  const rows = new Map<number, Piece[]>();
  for (const p of small) {
    const row = Math.floor(p.y0 / ROW);
    const list = rows.get(row);
    if (list) list.push(p);
    else rows.set(row, [p]);
  }
  return rows;
}

/** A stroke of a thin figure that is broken off and stands in its word, letter heights. */
const BROKEN_OFF = 0.7;

function withMarks(run: Run, letters: readonly Piece[], small: ReadonlyMap<number, readonly Piece[]>): Word {
  const box = boxOf(letters);
  const across = run === 'level' ? (p: Box) => p.y1 - p.y0 : (p: Box) => p.x1 - p.x0;
  const heights = letters.map(across).sort((a, b) => a - b);
  const size = heights[Math.floor(0.7 * heights.length)]!;
  const [ax, ay] = run === 'level' ? [0.45 * size, 0.25 * size] : [0.25 * size, 0.45 * size];
  const marks: Piece[] = [];
  for (let row = Math.floor((box.y0 - ay) / ROW) - 1; row <= Math.floor((box.y1 + ay) / ROW); row++)
    for (const p of small.get(row) ?? []) {
      const x = (p.x0 + p.x1) / 2;
      const y = (p.y0 + p.y1) / 2;
      if (x < box.x0 - ax || x > box.x1 + ax || y < box.y0 - ay || y > box.y1 + ay) continue;
      if (isMark(p) && letters.includes(p)) continue;
      const long = Math.max(p.x1 - p.x0, p.y1 - p.y0);
      const isBroken = p.x0 >= box.x0 && p.x1 <= box.x1 && p.y0 >= box.y0 - 1 && p.y1 <= box.y1 + 1;
      const most = long < SMALLEST ? 0.75 : isBroken ? BROKEN_OFF : 0.45;
      if (long < most * size && p.area > 0.012 * size * size) marks.push(p);
    }
  return wordOf(run, [...letters, ...marks], size);
}

function wordOf(run: Run, pieces: readonly Piece[], size: number): Word {
  const sorted = [...pieces].sort(run === 'level' ? (a, b) => a.x0 - b.x0 : (a, b) => b.y1 - a.y1);
  return { ...boxOf(sorted), run, pieces: sorted, size };
}

/** A single dash of a line, a bit of grid. */
export function isStroke(w: Word): boolean {
  const [width, height] = [w.x1 - w.x0, w.y1 - w.y0];
  return w.pieces.length === 1 && Math.min(width, height) < 0.22 * Math.max(width, height);
}

/** The box around several. */
export function boxOf(boxes: readonly Box[]): Box {
  return {
    x0: Math.min(...boxes.map((b) => b.x0)),
    y0: Math.min(...boxes.map((b) => b.y0)),
    x1: Math.max(...boxes.map((b) => b.x1)),
    y1: Math.max(...boxes.map((b) => b.y1)),
  };
}

/** Whether the middle of a box lies inside the frame. */
export function isInFrame({ x0, y0, x1, y1 }: Box, frame: Box): boolean {
  const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
  return x > frame.x0 && x < frame.x1 && y > frame.y0 && y < frame.y1;
}

/** Gap between two words with a dash between, letter heights. */
const DASHED_GAP = 2.6;

/** Whether a dash stands between two level words, in the middle of their height, a blank from either. */
function isDashed(a: Span, b: Span, size: number, dashes: readonly Box[]): boolean {
  if (b[0] - a[1] > DASHED_GAP * size) return false;
  const [top, base] = [Math.max(a[2], b[2]), Math.min(a[3], b[3])];
  return dashes.some(
    (d) =>
      d.x0 > a[1] && d.x1 < b[0] && d.x1 - d.x0 > 2 * (d.y1 - d.y0) && d.y0 > top + 0.2 * (base - top) && d.y1 < base,
  );
}

/** How high the capitals of two words are where most of their letters are small ones: blanks go by these. */
const capitals = (a: Span, b: Span, size: number): number =>
  Math.min(CAPITAL * size, Math.max(a[3] - a[2], b[3] - b[2]));
const CAPITAL = 1.5;

/**
 * Joins words that stand in one line.
 * @param widest gap between them, letter heights: a blank
 * @param mayCross whether a word may be part of a line that runs across the frame, as a label at the end of a curve does
 * @param dashes strokes that are no words: one between two words joins them, "Pressure – mbar"
 */
export function joinLines(
  words: readonly Word[],
  frame: Box,
  widest = LINE_GAP,
  mayCross: (word: Word) => boolean = () => false,
  dashes: readonly Box[] = [],
): Word[] {
  const out: Word[] = [];
  for (const run of ['level', 'upright'] as const) {
    const some = words.filter((w) => w.run === run);
    const spans = some.map((w): Span => (run === 'level' ? [w.x0, w.x1, w.y0, w.y1] : [w.y0, w.y1, w.x0, w.x1]));
    const order = spans.map((_, i) => i).sort((a, b) => spans[a]![0] - spans[b]![0]);
    const group = spans.map((_, i) => i);
    const root = (a: number): number => (group[a] === a ? a : root(group[a]!));
    const tallest = Math.max(0, ...some.map((w) => w.size));
    for (let k = 0; k < order.length; k++)
      for (let m = k + 1; m < order.length; m++) {
        const [i, j] = [order[k]!, order[m]!];
        const [a, b] = [spans[i]!, spans[j]!];
        if (b[0] - a[1] > (dashes.length ? DASHED_GAP : CAPITAL * widest) * tallest) break;
        const small = Math.min(some[i]!.size, some[j]!.size);
        const large = Math.max(some[i]!.size, some[j]!.size);
        if (large > 1.8 * small) continue;
        if (
          b[0] - a[1] > widest * Math.max(large, capitals(a, b, large)) &&
          !(run === 'level' && isDashed(a, b, large, dashes))
        )
          continue;
        const isAcross = isInFrame(some[i]!, frame) !== isInFrame(some[j]!, frame);
        if (isAcross && !(mayCross(some[i]!) && mayCross(some[j]!))) continue;
        if (Math.min(a[3], b[3]) - Math.max(a[2], b[2]) > 0.5 * small) group[root(j)] = root(i);
      }
    const lines = new Map<number, Word[]>();
    some.forEach((w, i) => lines.set(root(i), [...(lines.get(root(i)) ?? []), w]));
    for (const line of lines.values())
      out.push(
        wordOf(
          run,
          line.flatMap((w) => w.pieces),
          Math.max(...line.map((w) => w.size)),
        ),
      );
  }
  return out;
}
