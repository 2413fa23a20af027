import { asLatin } from '../letters/as-latin.ts';
import type { Mark } from '../letters/marks.ts';
import { spelling, wanted, type Wanted } from '../letters/spelling.ts';
import type { FieldName } from '../reading.ts';
import { isCodeBySelf } from '../tables/fields.ts';
import { isNothing } from '../tables/nothing.ts';
import { LABELS } from '../tables/labels.ts';
import { SPOKEN } from '../tables/spoken.ts';
import { PLATE_UNITS } from '../tables/units.ts';
import { around, inOneRow, type Box, type Run } from './runs.ts';

/** What a label or a unit says about the value it belongs to. */
export type Meaning = {
  readonly field: FieldName | 'other' | 'input' | 'shaft';
  readonly weight: number;
  /** for units: value in the field's unit = (printed + offset) × factor */
  readonly factor?: number;
  readonly offset?: number;
  /** words that are the value: three phase */
  readonly value?: number;
};

/** Words that were recognised. One thing may be both: `kW` behind a number is its unit, above it the label. */
export type Hit = Box & {
  readonly text: string;
  readonly runs: readonly Run[];
  readonly capitalHeight: number;
  /** the chance that these words stand here, 0..1 */
  readonly clarity: number;
  readonly isUnit: boolean;
  readonly meanings: readonly Meaning[];
};

type Phrase = {
  /** the figure that is all the meaning: of 3~ and 1~ */
  figure: string | null;
  text: string;
  length: number;
  wanted: Wanted;
  isUnit: boolean;
  meanings: Meaning[];
};

const PHRASES: readonly Phrase[] = phrases();
const LONGEST = Math.max(...PHRASES.map(({ length }) => length));
/** A gap within a label, in capital heights. */
const WORD_GAP = 1.3;

function phrases(): Phrase[] {
  const all = new Map<string, Phrase>();
  const add = (spelling: string, isUnit: boolean, meanings: Meaning[]) => {
    const text = isUnit ? spelling.replaceAll('.', '') : asLatin(spelling);
    if (text === '') return;
    const key = `${isUnit} ${text}`;
    const known = all.get(key);
    if (!known)
      all.set(key, {
        figure: spokenFigure(text, meanings),
        text,
        length: [...text].length,
        wanted: wanted(text),
        isUnit,
        meanings,
      });
    else known.meanings.push(...meanings.filter((m) => !known.meanings.some((k) => k.field === m.field)));
  };
  for (const { fields, factor, offset, spellings } of PLATE_UNITS) {
    for (const spelling of spellings)
      add(
        spelling,
        true,
        fields.map((field) => ({ field, weight: weightIn(fields, field), factor, offset })),
      );
  }
  for (const [field, weight, words] of LABELS)
    for (const word of words.split(' | ')) add(word, false, [{ field, weight }]);
  for (const [field, value, words] of SPOKEN)
    for (const word of words.split(' | ')) add(word, false, [{ field, weight: 1, value }]);
  return [...all.values()];
}

function spokenFigure(text: string, meanings: readonly Meaning[]): string | null {
  return meanings.some(({ value }) => value !== undefined) ? (/[13]/.exec(text)?.[0] ?? null) : null;
}

/** A unit means any of its fields; which one, other evidence says. Some stand with things nobody asks for. */
function weightIn(fields: readonly string[], field: string): number {
  if (!fields.includes('other') || fields.length === 1) return 1;
  return field === 'other' ? 0.3 : 0.7;
}

/**
 * How much of a perfect spelling is an even bet, and how fast it grows surer, by the worth of the phrase: short ones are like
 * too many other things. Practice values.
 */
const SPELT = [
  { below: 4, half: 0.6, slope: 2 },
  { below: 8, half: 0.75, slope: 2 },
  { below: 16, half: 0.65, slope: 1.5 },
  { below: Infinity, half: 0.57, slope: 1 },
] as const;
/** Right behind a number a unit is what one expects. */
const EXPECTED = 1.6;

/** How far a spelling is beyond an even bet. */
function margin(worth: number, most: number): number {
  const { half, slope } = SPELT.find(({ below }) => most < below)!;
  return slope * (worth - half * most);
}

/** A longer wording that is nearly as likely is what was printed: `1/min` and not `/min`, `rotor Ø` and not `rotor`. */
const NEARLY = { unit: 1, label: 2.5 };

/** Finds labels and units among the runs of a plate; no run belongs to two. */
export function hitsAmong(runs: readonly Run[]): Hit[] {
  const found = runs.flatMap((_, start) => hitsFrom(runs, start)).toSorted((a, b) => b.margin - a.margin);
  const taken = new Set<number>();
  const isFree = ({ hit }: Found) => hit.runs.every(({ id }) => !taken.has(id));
  return found.flatMap((one) => {
    if (!isFree(one)) return [];
    const { hit } = found.find((other) => goesFurther(other, one) && isFree(other)) ?? one;
    for (const { id } of hit.runs) taken.add(id);
    return [hit];
  });
}

function goesFurther(a: Found, b: Found): boolean {
  const [long, short] = [a.hit.runs, b.hit.runs];
  const contains = long.length > short.length && long[0]!.id <= short[0]!.id && long.at(-1)!.id >= short.at(-1)!.id;
  if (!contains || a.hit.isUnit !== b.hit.isUnit) return false;
  return a.hit.isUnit
    ? a.margin > b.margin - NEARLY.unit
    : isDiameterSign(long.at(-1)!) && a.margin > b.margin - NEARLY.label;
}

/** What a reader of words makes of the sign Ø behind a label. */
const isDiameterSign = ({ word: { text } }: Run) => /^[08]$/.test(text);

/** Codes that stand for themselves are no labels, however like. */
const isCode = ({ word }: Run) => isNothing(word.text) || isCodeBySelf(word.text);

type Found = { readonly hit: Hit; readonly margin: number };

function hitsFrom(runs: readonly Run[], start: number): Found[] {
  const found: Found[] = [];
  const taken: Run[] = [];
  let marks: Mark[] = [];
  for (let i = start; i < runs.length; i++) {
    const run = runs[i]!;
    const last = taken.at(-1);
    if (isCode(run) || (last && !isClose(last, run))) break;
    taken.push(run);
    marks = [...marks, ...run.marks];
    if (marks.length > LONGEST + 4) break;
    if (!taken.some(({ kind }) => kind === 'text') || !areOwn(taken)) continue;
    const isBehind = isBehindFigure(runs[start - 1], taken[0]!);
    // a lone letter is a word of its own, or the unit of the number before it
    if (marks.length === 1 && !isBehind && !(run.index === 0 && run.isLast)) continue;
    const best = bestOf(marks, isBehind, isOneWord(taken));
    if (best && !(best.hit.isUnit && isAmidCode(taken, marks.length)))
      found.push({
        margin: best.margin,
        hit: {
          ...best.hit,
          ...around(taken),
          runs: [...taken],
          capitalHeight: run.word.capitalHeight,
          text: taken.map((r) => r.text).join(' '),
        },
      });
  }
  return found;
}

const isClose = (a: Run, b: Run) => {
  const gap = b.x0 - a.x1;
  const height = Math.max(a.word.capitalHeight, b.word.capitalHeight);
  return inOneRow(a, b) && gap < WORD_GAP * height && gap > -height;
};

/** Figures belong to a unit or label only within a word, `min-1`, `P2`, or as the number of phases, `3 ~ Mot.` */
const areOwn = ([first, ...rest]: readonly Run[]) =>
  areInWords(/^[13]~?$/.test(first!.text) ? rest : [first!, ...rest]);
const areInWords = (runs: readonly Run[]) =>
  runs.every(
    (run, i) =>
      run.kind === 'text' ||
      (i > 0 && i === runs.length - 1 && isDiameterSign(run)) ||
      runs.some(({ kind, word }) => kind === 'text' && word === run.word),
  );

/** Letters with figures before and behind in one word are part of a code, `5467W44`; so are a few before figures. */
const isAmidCode = (runs: readonly Run[], letters: number) =>
  !runs.at(-1)!.isLast && (runs[0]!.index > 0 || letters < SHORT_UNIT);

const SHORT_UNIT = 3;
const isOneWord = (runs: readonly Run[]) => runs.every(({ word }) => word === runs[0]!.word);

const isBehindFigure = (before: Run | undefined, run: Run) => before?.kind === 'figure' && isClose(before, run);

const BY_LENGTH = new Map<number, Phrase[]>();
function nearInLength(count: number): Phrase[] {
  let near = BY_LENGTH.get(count);
  if (!near) {
    near = PHRASES.filter(({ length }) => Math.abs(length - count) <= Math.max(1, 0.34 * length));
    BY_LENGTH.set(count, near);
  }
  return near;
}

/** Full stops and brackets say nothing in a label, and are the first thing lost. */
const withoutStops = (marks: readonly Mark[]) => marks.filter((mark) => !'.:,;()[]{}'.includes(mark.options[0]!.text));

type Likeness = { phrase: Phrase; margin: number };

function bestOf(marks: readonly Mark[], isBehind: boolean, isWord: boolean) {
  const letters = withoutStops(marks);
  if (letters.length === 0) return null;
  const isShortened = letters.length >= 3 && marks.at(-1)!.options[0]!.text === '.';
  const near = nearInLength(letters.length);
  // short units are one word
  const possible = isWord ? near : near.filter(({ isUnit, length }) => !isUnit || length > SHORT_UNIT);
  const all = possible.map((phrase) => likeness(letters, phrase, isBehind));
  if (isShortened) all.push(...shortened(letters));
  let [best, second]: [Likeness | null, Likeness | null] = [null, null];
  for (const found of all) {
    if (!best || found.margin > best.margin) [best, second] = [found, best];
    else if (!second || found.margin > second.margin) second = found;
  }
  if (!best) return null;
  const clarity = 1 / (1 + Math.exp(-best.margin));
  if (clarity < 0.25) return null;
  // where another phrase is nearly as like, both may be meant
  const rival = second && second.margin > best.margin - 2 ? second : null;
  const meanings = rival ? mixed(best, rival) : best.phrase.meanings;
  return { margin: best.margin, hit: { clarity, isUnit: best.phrase.isUnit, meanings } };
}

function likeness(letters: readonly Mark[], phrase: Phrase, isBehind: boolean): Likeness {
  if (
    phrase.figure !== null &&
    !letters.some((mark) => mark.options.some((o) => o.text === phrase.figure && o.share >= 0.3))
  )
    return { phrase, margin: -Infinity };
  if ((phrase.length === 1 || letters.length === 1) && !isExactly(letters, phrase.text))
    return { phrase, margin: -Infinity };
  // metres and hours are letters like others, but behind a number
  if (phrase.length === 1 && phrase.isUnit && !isBehind && phrase.meanings[0]!.field === 'other')
    return { phrase, margin: -Infinity };
  const worth = spelling(letters, phrase.wanted) + (isBehind && phrase.isUnit ? EXPECTED : 0);
  return { phrase, margin: margin(worth, phrase.wanted.most) };
}

/** `Frec.` is a label cut short: the first letters of a longer one, before a full stop. */
function shortened(letters: readonly Mark[]): Likeness[] {
  const most = letters.length * LETTER;
  return PHRASES.filter(
    ({ length, isUnit, meanings }) => !isUnit && length > letters.length + 1 && meanings[0]!.value === undefined,
  ).map((phrase) => ({
    phrase,
    margin: margin(spelling(letters, phrase.wanted, letters.length), most) - SHORTENED,
  }));
}
/** Worth of one letter. */
const LETTER = wanted('M').most;
/** What a label cut short is less sure. */
const SHORTENED = 2.5;

/** A lone letter means something only as it is written: f is a frequency, F a class. */
const isExactly = (marks: readonly Mark[], text: string) =>
  marks.length === 1 && marks[0]!.options.some((option) => option.text === text && option.share >= 0.3);

function mixed(best: Likeness, rival: Likeness): Meaning[] {
  const share = 1 / (1 + Math.exp(rival.margin - best.margin));
  const scaled = (meanings: readonly Meaning[], by: number) => meanings.map((m) => ({ ...m, weight: m.weight * by }));
  const own = best.phrase.meanings;
  // a unit that is a label too says nothing new as one
  const others = rival.phrase.meanings.filter(
    (m) => !own.some((o) => o.field === m.field && (m.factor === undefined || m.factor === o.factor)),
  );
  return others.length ? [...scaled(own, share), ...scaled(others, 1 - share)] : own;
}
