import { asLatin } from '../letters/as-latin.ts';
import type { Mark } from '../letters/marks.ts';
import { mostOf, spelling } from '../letters/spelling.ts';
import type { FieldName } from '../reading.ts';
import { CODE_PATTERNS } from '../tables/fields.ts';
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

type Phrase = { text: string; most: number; isUnit: boolean; meanings: Meaning[] };

const PHRASES: readonly Phrase[] = phrases();
const LONGEST = Math.max(...PHRASES.map(({ text }) => text.length));
/** A gap within a label, in capital heights. */
const WORD_GAP = 1.3;

function phrases(): Phrase[] {
  const all = new Map<string, Phrase>();
  const add = (spelling: string, isUnit: boolean, meanings: Meaning[]) => {
    const text = isUnit ? spelling.replaceAll('.', '') : asLatin(spelling);
    if (text === '') return;
    const key = `${isUnit} ${text}`;
    const known = all.get(key);
    if (!known) all.set(key, { text, most: mostOf(text), isUnit, meanings });
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

/** A unit means any of its fields; which one, other evidence says. Some stand with things nobody asks for. */
function weightIn(fields: readonly string[], field: string): number {
  if (!fields.includes('other') || fields.length === 1) return 1;
  return field === 'other' ? 0.3 : 0.7;
}

/** Chance that a phrase stands where it is worth this much: half of a perfect spelling is an even bet. Practice value. */
const chance = (worth: number, most: number) =>
  1 / (1 + Math.exp(Math.max(2.2, (most < SHORT ? 0.62 : 0.5) * most) - worth));
/** Labels of up to three letters are like too many other things. */
const SHORT = 11.5;
/** Right behind a number a unit is what one expects. */
const EXPECTED = 1.6;

/** Finds labels and units among the runs of a plate; no run belongs to two. */
export function hitsAmong(runs: readonly Run[]): Hit[] {
  const found = runs.flatMap((_, start) => hitsFrom(runs, start));
  const taken = new Set<number>();
  return found
    .toSorted((a, b) => b.worth - a.worth)
    .filter(({ hit }) => {
      if (hit.runs.some(({ id }) => taken.has(id))) return false;
      for (const { id } of hit.runs) taken.add(id);
      return true;
    })
    .map(({ hit }) => hit);
}

/** Codes that stand for themselves are no labels, however like. */
const isCode = ({ word }: Run) => {
  const text = word.text.toUpperCase();
  return CODE_PATTERNS.some(({ whole, bySelf }) => bySelf >= 3.5 && whole.test(text));
};

function hitsFrom(runs: readonly Run[], start: number): { hit: Hit; worth: number }[] {
  const found: { hit: Hit; worth: number }[] = [];
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
    const best = bestOf(marks, isBehindFigure(runs[start - 1], taken[0]!));
    if (best)
      found.push({
        worth: best.worth,
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

/** Figures belong to a unit or label only within a word: `min-1`, `P2`. */
const areOwn = (runs: readonly Run[]) =>
  runs.every((run) => run.kind === 'text' || runs.some(({ kind, word }) => kind === 'text' && word === run.word));

const isBehindFigure = (before: Run | undefined, run: Run) => before?.kind === 'figure' && isClose(before, run);

/** Full stops say nothing in a label, and are the first thing lost. */
const withoutStops = (marks: readonly Mark[]) => marks.filter((mark) => !'.:,'.includes(mark.options[0]!.text));

function bestOf(marks: readonly Mark[], isBehind: boolean) {
  const letters = withoutStops(marks);
  if (letters.length === 0) return null;
  const near = PHRASES.filter(({ text }) => Math.abs(text.length - letters.length) <= Math.max(1, 0.34 * text.length));
  let best: { phrase: Phrase; worth: number } | null = null;
  let second: { phrase: Phrase; worth: number } | null = null;
  for (const phrase of near) {
    if ((phrase.text.length === 1 || letters.length === 1) && !isExactly(letters, phrase.text)) continue;
    const worth = spelling(letters, phrase.text) + (isBehind && phrase.isUnit ? EXPECTED : 0);
    if (!best || worth > best.worth) [best, second] = [{ phrase, worth }, best];
    else if (!second || worth > second.worth) second = { phrase, worth };
  }
  if (!best) return null;
  const clarity = chance(best.worth, best.phrase.most);
  if (clarity < 0.25) return null;
  // where another phrase is nearly as like, both may be meant
  const rival = second && second.worth > best.worth - 1.5 ? second : null;
  const meanings = rival ? mixed(best, rival) : best.phrase.meanings;
  return { worth: best.worth, hit: { clarity, isUnit: best.phrase.isUnit, meanings } };
}

/** A lone letter means something only as it is written: f is a frequency, F a class. */
const isExactly = (marks: readonly Mark[], text: string) =>
  marks.length === 1 && marks[0]!.options.some((option) => option.text === text && option.share >= 0.3);

function mixed(best: { phrase: Phrase; worth: number }, rival: { phrase: Phrase; worth: number }): Meaning[] {
  const share = 1 / (1 + Math.exp(rival.worth - best.worth));
  const scaled = (meanings: readonly Meaning[], by: number) => meanings.map((m) => ({ ...m, weight: m.weight * by }));
  const own = best.phrase.meanings;
  const others = rival.phrase.meanings.filter((m) => !own.some((o) => o.field === m.field && o.factor === m.factor));
  return [...scaled(own, others.length ? share : 1), ...scaled(others, 1 - share)];
}
