import type { WordCrop, WordRead, WordReader } from '../../words/word-reader.ts';
import { chainWords, isInFrame, isStroke, joinLines, LINE_GAP, type Word } from './chains.ts';
import { piecesClearOfGrid } from './clear-of-grid.ts';
import { cropOf, softened } from './crops.ts';
import type { Pieces } from './pieces.ts';
import type { Surroundings } from './surroundings.ts';

/** A piece of text in the plot or near it: where its middle and its box lie, in shares of the frame. */
export type PlotWord = {
  readonly text: string;
  readonly confidence: number;
  readonly u: number;
  readonly v: number;
  readonly box: { readonly u0: number; readonly v0: number; readonly u1: number; readonly v1: number };
  /** 0 level, 90 from the bottom up, degrees */
  readonly angle: 0 | 90;
  readonly isInside: boolean;
};

const MOST_INSIDE = 28;
const MOST_SINGLE = 14;
const MOST_OUTSIDE = 8;
/** A caption may be this many label heights long; a paragraph's lines are longer. */
const LONGEST_LINE = 64;
const LEAST_SURE = 0.3;
/** Speeds have no more; a longer run is a number with something beside it. */
const MOST_FIGURES = 4;

/**
 * Reads what is written in the plot (speeds, names of curves, legends) and the lines near it (captions, speed, density).
 * @param lines those that are neither tick labels nor titles
 * @param taken tick labels and titles
 * @param size height of the tick labels, pixels
 */
export async function readPlotWords(
  all: Surroundings,
  pieces: Pieces,
  lines: readonly Word[],
  taken: readonly Word[],
  size: number,
  reader: WordReader,
): Promise<PlotWord[]> {
  const { frame } = all;
  const isInside = (w: Word) => isInFrame(w, frame);
  const isLike = (w: Word) => w.size > 0.55 * size && w.size < 1.8 * size && !isStroke(w);
  const clear = piecesClearOfGrid(all, pieces, size);
  const cut = (from: Pieces) => (word: Word) => ({ word, from });
  const asPrinted = lines.filter((w) => isLike(w) && isInside(w)).map(cut(pieces));
  // the same words without the grid, where they are other ones then
  const freed = joinLines(chainWords(all, clear.list), frame, LINE_GAP, () => true)
    .filter((w) => isLike(w) && isInside(w) && !taken.some((t) => overlap(t, w)))
    .filter((w) => !asPrinted.some(({ word }) => isAlike(word, w, 0.3 * size)))
    .map(cut(clear));
  const inside = [...asPrinted, ...freed];
  const words = inside.filter(({ word: w }) => w.pieces.length > 1 || w.x1 - w.x0 > 1.6 * w.size);
  const single = asPrinted.filter((c) => !words.includes(c) && c.word.run === 'level' && c.word.size > 0.7 * size);
  const near = lines
    .filter((w) => isLike(w) && !isInside(w))
    .filter((w) => w.run === 'level' && w.pieces.length > 3 && w.x1 - w.x0 < LONGEST_LINE * w.size)
    .map((w) => ({
      w,
      far: Math.max(frame.y0 - w.y1, w.y0 - frame.y1, 0) + Math.max(frame.x0 - w.x1, w.x0 - frame.x1, 0),
    }))
    .filter(({ far }) => far < 14 * size)
    .sort((a, b) => a.far - b.far)
    .slice(0, MOST_OUTSIDE)
    .map(({ w }) => cut(pieces)(w));
  const texts = [...bySize(words, size).slice(0, MOST_INSIDE), ...near];
  // markers look like letters; a chart has more of them than of names
  const letters = single.length <= MOST_SINGLE ? single : [];
  const crops = texts.map(({ word, from }) => cropOf(all, from, word));
  const read = (await withSecondLook(crops, await reader(crops, 'text'), reader)).map((r, i) =>
    SHORT_NUMBER.test(r.text) && isInkBefore(all, texts[i]!)
      ? { ...r, confidence: Math.min(r.confidence, PERHAPS_CUT) }
      : r,
  );
  const glyphs = await reader(
    letters.map(({ word, from }) => cropOf(all, from, word)),
    'glyph',
  );
  const understood = [
    ...texts.map(({ word }, i) => ({ w: word, r: read[i]! })),
    ...letters.map(({ word }, i) => ({ w: word, r: glyphs[i]! })),
  ].filter(({ r }) => r.confidence >= LEAST_SURE && /[\p{L}\p{N}%°]/u.test(r.text));
  return fullest(withoutMarkers(understood)).map(({ w, r }) => {
    const [u0, u1] = [w.x0, w.x1].map((x) => (x - frame.x0) / (frame.x1 - frame.x0)) as [number, number];
    const [v1, v0] = [w.y0, w.y1].map((y) => 1 - (y - frame.y0) / (frame.y1 - frame.y0)) as [number, number];
    return {
      text: r.text,
      confidence: r.confidence,
      u: (u0 + u1) / 2,
      v: (v0 + v1) / 2,
      box: { u0, v0, u1, v1 },
      angle: w.run === 'level' ? 0 : 90,
      isInside: isInside(w),
    } as const;
  });
}

/** Read between these, a speed is looked at once more, softened: raised and small letters of its unit say little about its figures. */
const DOUBTFUL = 0.4;
/** Of 15 speeds of four figures and the last a nought that two looks agreed on, none was wrong; see `SURE_ALONE`. */
const AGREED = 0.76;
const ROUND_SPEED = /(?<!\d)\d{3}0(?!\d)/;

/** Words as read, and speeds that were hard to read as sure where a second look sees the same figures. */
async function withSecondLook(
  crops: readonly WordCrop[],
  reads: readonly WordRead[],
  reader: WordReader,
): Promise<WordRead[]> {
  const figures = ({ text }: WordRead): string | undefined => ROUND_SPEED.exec(text)?.[0];
  const doubtful = reads.flatMap((r, i) =>
    r.confidence > DOUBTFUL && r.confidence < AGREED && figures(r) !== undefined ? [i] : [],
  );
  const again = await reader(
    doubtful.map((i) => softened(crops[i]!)),
    'text',
  );
  const agreed = new Set(doubtful.filter((i, k) => figures(again[k]!) === figures(reads[i]!)));
  return reads.map((r, i) => (agreed.has(i) ? { ...r, confidence: AGREED } : r));
}

/** A number that may have lost its first figure, and how surely it is read where something is printed before it. */
const SHORT_NUMBER = /^\W{0,2}\d{1,3}(?!\d)/u;
const PERHAPS_CUT = 0.6;
/** Where a figure before the word would stand, letter heights; it covers so much of the height. */
const FIGURE_WIDE = 0.7;
const MOST_ROWS = 0.65;
/** Print is at least so dark, share of the word's own. */
const DARK = 0.6;

/** Whether print as high and dark as its figures stands right before a level word: a curve beside it, or a fold, hides some. */
function isInkBefore({ width, ink }: Surroundings, { word, from }: { word: Word; from: Pieces }): boolean {
  if (word.run !== 'level') return false;
  const [left, right] = [Math.max(0, Math.round(word.x0 - FIGURE_WIDE * word.size)), word.x0 - 2];
  const own = new Set(word.pieces.map(({ id }) => id));
  const printed: number[] = [];
  let rows = 0;
  for (let y = word.y0; y < word.y1; y++)
    for (let x = word.x0; x < word.x1; x++) if (own.has(from.labels[y * width + x]!)) printed.push(ink[y * width + x]!);
  const dark = DARK * (printed.reduce((sum, v) => sum + v, 0) / Math.max(1, printed.length));
  for (let y = word.y0; y < word.y1; y++) {
    const row = ink.subarray(y * width + left, y * width + right);
    if (row.some((v) => v > dark)) rows++;
  }
  return rows > MOST_ROWS * (word.y1 - word.y0);
}

type ReadWord = { w: Word; r: WordRead };

/** Nothing is called by one and the same letter at so many places: they are markers that look like it (A, O, x). */
const MOST_ALIKE = 3;

/** What was read in a plot without its markers, triangles read as A for instance, and two rings in a row as "oO" or "QO". */
export function withoutMarkers<T extends { readonly r: Pick<WordRead, 'text'> }>(words: readonly T[]): T[] {
  const letter = ({ r: { text } }: T): string =>
    text
      .replace(/[^\p{L}\p{N}]/gu, '')
      .toLowerCase()
      .replace(/[0qd]/g, 'o')
      .replace(/(.)\1+/g, '$1');
  const counts = new Map<string, number>();
  for (const word of words) counts.set(letter(word), (counts.get(letter(word)) ?? 0) + 1);
  return words.filter((word) => letter(word).length !== 1 || counts.get(letter(word))! < MOST_ALIKE);
}

/** Of readings of the same place the one with the longest number, then the surest and fullest. */
function fullest(words: readonly ReadWord[]): ReadWord[] {
  const figures = (text: string): number => Math.max(0, ...(text.match(/\d+/g) ?? []).map((run) => run.length));
  const worth = ({ r: { text, confidence } }: ReadWord): number =>
    Math.min(MOST_FIGURES, figures(text)) + confidence + 0.03 * Math.min(30, text.length);
  const kept: ReadWord[] = [];
  for (const word of [...words].sort((a, b) => worth(b) - worth(a)))
    if (!kept.some(({ w }) => overlap(w, word.w))) kept.push(word);
  return kept;
}

const overlap = (a: Word, b: Word): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;

/** The same box, but for so many pixels. */
const isAlike = (a: Word, b: Word, within: number): boolean =>
  [a.x0 - b.x0, a.x1 - b.x1, a.y0 - b.y0, a.y1 - b.y1].every((d) => Math.abs(d) < within);

/** Those most like the tick labels first. */
const bySize = <T extends { word: Word }>(words: readonly T[], size: number): T[] =>
  [...words].sort((a, b) => Math.abs(Math.log(a.word.size / size)) - Math.abs(Math.log(b.word.size / size)));
