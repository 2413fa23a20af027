import { asLatin } from '../letters/as-latin.ts';
import { wanted, type Wanted } from '../letters/spelling.ts';
import type { FieldName } from '../reading.ts';
import { LABELS } from '../tables/labels.ts';
import { SPOKEN } from '../tables/spoken.ts';
import { PLATE_UNITS } from '../tables/units.ts';

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

/** A label, a unit or words that are a value, made ready to be compared with what was read. */
export type Phrase = {
  /** the figure that is all the meaning: of 3~ and 1~ */
  figure: string | null;
  text: string;
  length: number;
  wanted: Wanted;
  isUnit: boolean;
  /** letters of another script in the shape of Latin ones */
  isLookAlike: boolean;
  meanings: Meaning[];
};

/** Every label, unit and spoken value of the tables, each spelling once. */
export const PHRASES: readonly Phrase[] = phrases();
/** Characters of the longest phrase. */
export const LONGEST = Math.max(...PHRASES.map(({ length }) => length));
function phrases(): Phrase[] {
  const all = new Map<string, Phrase>();
  const add = (spelling: string, isUnit: boolean, meanings: Meaning[], isLookAlike = false) => {
    const text = isUnit && !isLookAlike ? spelling.replaceAll('.', '') : asLatin(spelling);
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
        isLookAlike,
        meanings,
      });
    else known.meanings.push(...meanings.filter((m) => !known.meanings.some((k) => k.field === m.field)));
  };
  for (const { fields, factor, offset, spellings } of PLATE_UNITS) {
    const meanings = fields.map((field): Meaning => ({ field, weight: weightIn(fields, field), factor, offset }));
    for (const spelling of spellings) {
      add(spelling, true, [...meanings]);
      if (isCyrillic(spelling)) add(spelling, true, [...meanings], true);
    }
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

const BY_LENGTH = new Map<number, Phrase[]>();
/** Phrases of about so many characters. */
export function nearInLength(count: number): Phrase[] {
  let near = BY_LENGTH.get(count);
  if (!near) {
    near = PHRASES.filter(({ length }) => Math.abs(length - count) <= Math.max(1, 0.34 * length));
    BY_LENGTH.set(count, near);
  }
  return near;
}

function isCyrillic(spelling: string): boolean {
  return /\p{Script=Cyrillic}/u.test(spelling);
}
