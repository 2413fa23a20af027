import type { ReadWord } from '../../writing/written.ts';
import { takenFor } from '../tables/confusions.ts';
import { marksOf, textOf, type Mark } from '../letters/marks.ts';
import type { Box } from './boxes.ts';
import { cleaned } from './clean-marks.ts';

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

/** Parts words where figures begin and end: `5.5kW` is a figure and a text, `min-1` and `IP55` the other way round. */
export function runsOf(all: readonly ReadWord[]): Run[] {
  let id = 0;
  return all
    .filter((word) => !isTexture(word, usualHeight(all)))
    .flatMap((word) => {
      const marks = cleaned(marksOf(word));
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
