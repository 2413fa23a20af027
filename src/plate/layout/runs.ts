import type { ReadWord } from '../../writing/written.ts';
import { VOLTS } from '../tables/fields.ts';
import { takenFor } from '../tables/confusions.ts';
import { marksOf, textOf, type Mark } from '../letters/marks.ts';

/** A rectangle of the flat picture. */
export type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** A piece of a word in which only figures stand, or only letters and signs. */
export type Run = Box & {
  readonly kind: 'figure' | 'text';
  readonly marks: readonly Mark[];
  readonly text: string;
  readonly word: ReadWord;
  readonly id: number;
  /** its place among the runs of its word */
  readonly index: number;
  readonly isLast: boolean;
};

const isSign = (text: string) => '.,/-+~'.includes(text);
const digitShare = (mark: Mark) =>
  mark.options.reduce((sum, { text, share }) => sum + (/^\d$/.test(text) ? share : 0), 0);
/** A letter that is a figure in shape: it is one among figures. */
const looksLikeDigit = (text: string) => [...'0123456789'].some((digit) => takenFor(text, digit) >= 0.09);
/** At the edge of a word only these are: capitals stand before numbers for reasons of their own. */
const EDGE = new Set('lI|!Oo');

/** Words of about one height whose gap is less than this many capital heights follow each other. */
const ROW_GAP = 2;
const MOST_HEIGHT_RATIO = 1.8;

/** Words in the order of reading: rows of print from left to right, by where they stand. */
export function inReadingOrder(words: readonly ReadWord[]): ReadWord[] {
  const sorted = words.toSorted((a, b) => a.x0 - b.x0);
  const next = new Map<ReadWord, ReadWord>();
  const isNext = new Set<ReadWord>();
  for (const word of sorted) {
    const followers = sorted.filter((other) => other !== word && !isNext.has(other) && follows(word, other));
    const nearest = followers.toSorted((a, b) => a.x0 - b.x0)[0];
    if (!nearest) continue;
    next.set(word, nearest);
    isNext.add(nearest);
  }
  const ordered: ReadWord[] = [];
  for (const first of sorted.filter((word) => !isNext.has(word)).toSorted((a, b) => a.y0 - b.y0)) {
    for (let word: ReadWord | undefined = first; word; word = next.get(word)) ordered.push(word);
  }
  return ordered.filter((word, i) => !isConnection(ordered[i - 1], word, ordered[i + 1]));
}

/** The Y of `400 / Y 690`: a sign of connection inside a list of voltages. */
function isConnection(before: ReadWord | undefined, word: ReadWord, after: ReadWord | undefined): boolean {
  if (!before || !after || !/^[AΔDYλ]$/.test(word.text) || !follows(word, after)) return false;
  return before.text.endsWith('/') && VOLTS.includes(Number.parseInt(after.text, 10));
}

function follows(a: ReadWord, b: ReadWord): boolean {
  const height = Math.max(a.capitalHeight, b.capitalHeight);
  const gap = b.x0 - a.x1;
  return (
    b.x0 > a.x0 &&
    gap < ROW_GAP * height &&
    gap > -height &&
    height < MOST_HEIGHT_RATIO * Math.min(a.capitalHeight, b.capitalHeight) &&
    inOneRow(a, b)
  );
}

/** Parts words where figures begin and end: `5.5kW` is a figure and a text, `min-1` and `IP55` the other way round. */
export function runsOf(all: readonly ReadWord[]): Run[] {
  let id = 0;
  return all
    .filter((word) => !isTexture(word, usualHeight(all)))
    .flatMap((word) => {
      const marks = withoutConnections(
        withRanges(withoutSides(marksOf(word).filter((mark) => mark.options[0]!.text.trim() !== ''))),
      );
      if (isRubbish(marks)) return [];
      const kinds = kindsOf(marks);
      const runs: { kind: Run['kind']; marks: Mark[] }[] = [];
      marks.forEach((mark, i) => {
        if (i === 0 || kinds[i] !== kinds[i - 1]) runs.push({ kind: kinds[i]!, marks: [] });
        runs.at(-1)!.marks.push(mark);
      });
      return runs.map((run, index) => ({
        ...run,
        text: textOf(run.marks),
        word,
        id: id++,
        index,
        isLast: index === runs.length - 1,
        x0: run.marks[0]!.x0,
        x1: run.marks.at(-1)!.x1,
        y0: word.y0,
        y1: word.y1,
      }));
    });
}

/** What the side of a box beside a word is read as. */
const SIDES = new Set('|[]{}\\_=«»');
const isSide = (mark: Mark | undefined) => mark !== undefined && SIDES.has(mark.options[0]!.text);

function withoutSides(marks: readonly Mark[]): readonly Mark[] {
  const first = marks.findIndex((mark) => !isSide(mark));
  const last = marks.findLastIndex((mark) => !isSide(mark));
  return first < 0 ? [] : marks.slice(first, last + 1);
}

/** Where the readings agree on nothing, no letters stand: a screw, a scratch, the edge of the plate. Practice value. */
const LEAST_AGREEMENT = 0.42;
const isRubbish = (marks: readonly Mark[]) =>
  marks.length === 0 || marks.reduce((sum, { options }) => sum + options[0]!.share, 0) < LEAST_AGREEMENT * marks.length;

/** Readings agree on a word: every reading saw it, and the same in it, 0..1. */
const agreementOn = ({ glyphs, seen, passes }: ReadWord): number =>
  (glyphs.reduce((sum, { share }) => sum + share, 0) / Math.max(glyphs.length, 1)) * (passes > 0 ? seen / passes : 1);
const CLEAR = 0.85;
/** Smaller than this share of most print only grain of the metal is, unless it reads clearly; a little larger, what hardly reads. */
const SMALL_PRINT = 0.36;
const SMALLISH_PRINT = 0.5;
const HARDLY = 0.6;

const usualHeight = (words: readonly ReadWord[]): number => {
  const heights = words
    .filter((word) => agreementOn(word) > CLEAR && word.glyphs.length > 1)
    .map((w) => w.capitalHeight);
  return heights.toSorted((a, b) => a - b)[Math.floor(heights.length / 2)] ?? 0;
};
const isTexture = (word: ReadWord, usual: number) =>
  (word.capitalHeight < SMALL_PRINT * usual && agreementOn(word) < CLEAR) ||
  (word.capitalHeight < SMALLISH_PRINT * usual && agreementOn(word) < HARDLY);

/** What the division sign of a range is read as: `220÷240`. */
const AS_RANGE = new Set([':', '=', '»', '*']);
const RANGE: Mark['options'] = [{ text: '-', share: 0.9 }];

function withRanges(marks: readonly Mark[]): readonly Mark[] {
  const isDigitAt = (i: number) => /^\d$/.test(marks[i]?.options[0]!.text ?? '');
  return marks.map((mark, i) =>
    AS_RANGE.has(mark.options[0]!.text) && [-2, -1, 1, 2].every((d) => isDigitAt(i + d))
      ? { ...mark, options: RANGE }
      : mark,
  );
}

/** Star and delta behind a voltage say nothing more than the list does, and a delta is read as an A or a 4: `220Δ/380Y`. */
function withoutConnections(marks: readonly Mark[]): readonly Mark[] {
  const isSignOf = (text: string | undefined) => text !== undefined && 'AΔDYλ'.includes(text);
  const texts = marks.map((mark) => mark.options[0]!.text);
  const delta = deltaAsFigure(texts.join(''));
  return marks.filter((_, i) => {
    if (i === delta) return false;
    if (!isSignOf(texts[i])) return true;
    const before = /(\d{3})$/.exec(texts.slice(0, i).join(''))?.[1];
    if (before !== undefined)
      return !VOLTS.includes(Number(before)) || !(i === marks.length - 1 || texts[i + 1] === '/');
    return !(texts[i - 1] === '/' && /^\d{3}\/$/.test(texts.slice(0, i).join('')));
  });
}

/** Where the 4 of `2304/400Y` stands: no voltage has four figures, and without it there are two. */
function deltaAsFigure(text: string): number | null {
  const [, before, after] = /^(\d{3})4[/-](\d{3})/.exec(text) ?? [];
  return before && after && VOLTS.includes(Number(before)) && VOLTS.includes(Number(after)) ? before.length : null;
}

function kindsOf(marks: readonly Mark[]): Run['kind'][] {
  const texts = marks.map((mark) => mark.options[0]!.text);
  const isDigit = marks.map((mark) => digitShare(mark) >= 0.5);
  const digits = isDigit.filter(Boolean).length;
  marks.forEach((_, i) => {
    if (isDigit[i] || isSign(texts[i]!) || !looksLikeDigit(texts[i]!)) return;
    const before = texts.slice(0, i).findLastIndex((t) => !isSign(t));
    const after = texts.findIndex((t, k) => k > i && !isSign(t));
    const inside = (before < 0 || isDigit[before]) && (after < 0 || isDigit[after]);
    const atEdge = before < 0 || after < 0;
    if (inside && (atEdge ? digits >= 2 && EDGE.has(texts[i]!) : true)) isDigit[i] = true;
  });
  // signs belong to the figure they stand in, or close behind: `1~`
  return marks.map((_, i) => {
    if (isDigit[i]) return 'figure';
    if (!isSign(texts[i]!)) return 'text';
    if (texts[i] === '~') return (isDigit[i - 1] && i === 1) || (isDigit[i + 1] && i === 0) ? 'figure' : 'text';
    // .78 and 220/ go on before or behind
    if ('.,'.includes(texts[i]!) && i === 0 && isDigit[1] && marks.length > 2) return 'figure';
    // 1.18/.59
    if (texts[i] === '/' && isDigit[i - 1] && '.,'.includes(texts[i + 1] ?? ' ') && isDigit[i + 2]) return 'figure';
    if ('.,'.includes(texts[i]!) && texts[i - 1] === '/' && isDigit[i + 1]) return 'figure';
    if (texts[i] === '/' && i === marks.length - 1 && isDigit[i - 1]) return 'figure';
    return isDigit[i - 1] && isDigit[i + 1] ? 'figure' : 'text';
  });
}

/** The centre of a box: x, y. */
export const middle = (box: Box): readonly [number, number] => [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];

/** The smallest box around boxes. */
export const around = (boxes: readonly Box[]): Box => ({
  x0: Math.min(...boxes.map((b) => b.x0)),
  y0: Math.min(...boxes.map((b) => b.y0)),
  x1: Math.max(...boxes.map((b) => b.x1)),
  y1: Math.max(...boxes.map((b) => b.y1)),
});

/** Whether two boxes stand in one row: the lower of the two overlaps the other by half its height. */
export function inOneRow(a: Box, b: Box): boolean {
  const overlap = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  return overlap > 0.5 * Math.min(a.y1 - a.y0, b.y1 - b.y0);
}
