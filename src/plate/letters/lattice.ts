import { takenFor } from '../tables/confusions.ts';
import type { Mark, Option } from './marks.ts';

/** One way to read a row of characters, and how likely. */
export type Spelt = { readonly text: string; readonly share: number };

const DIGITS = '0123456789';
const FIGURES = `${DIGITS}.,/-+~ `;
const CODES = `${DIGITS}ABCDEFGHIJKLMNOPQRSTUVWXYZ./-+()%`;
/** A character that no reading saw, and that is not like what they saw. */
const LEAST = 0.0002;
/** A point or comma that no reading saw, before a given figure. */
const UNSEEN_POINT = 0.006;
/** How much less a sign is mistaken that may itself stand there. */
const KNOWN_SIGN = 0.06;
const MOST_WAYS = 24;
const MOST_OPTIONS = 8;

/**
 * Ways to read characters as a number: digits and what stands among them.
 * @returns likeliest first; shares sum to about 1
 */
export const figureReadings = (marks: readonly Mark[]): Spelt[] => withPoints(ways(marks, FIGURES), marks.length);

/** Ways to read characters as a code of capitals and digits; as `figureReadings`. */
export const codeReadings = (marks: readonly Mark[]): Spelt[] => ways(marks, CODES);

function ways(marks: readonly Mark[], allowed: string): Spelt[] {
  let found: Spelt[] = [{ text: '', share: 1 }];
  for (const mark of marks) {
    const options = optionsAmong(mark.options, allowed);
    found = best(found.flatMap((way) => options.map((o) => ({ text: way.text + o.text, share: way.share * o.share }))));
  }
  return found;
}

/** What a character may be among those allowed here, by what readings saw and what that is taken for. */
function optionsAmong(options: readonly Option[], allowed: string): Option[] {
  const shares = new Map<string, number>();
  const add = (text: string, share: number) => shares.set(text, (shares.get(text) ?? 0) + share);
  for (const { text, share } of options) {
    const capital = text.toUpperCase();
    if (text === '') add('', share);
    else if (allowed.includes(text)) add(text, share);
    else if (allowed.includes(capital)) add(capital, share);
    for (const { text: other, share: taken } of mistakenFor(text, allowed)) add(other, share * taken);
  }
  const sum = [...shares.values()].reduce((a, b) => a + b, 0);
  return [...shares]
    .map(([text, share]) => ({ text, share: share / sum }))
    .filter(({ share }) => share > 1e-4)
    .toSorted((a, b) => b.share - a.share)
    .slice(0, MOST_OPTIONS);
}

const MISTAKEN = new Map<string, Option[]>();

/** What else a character may be that was read as this one. */
function mistakenFor(read: string, allowed: string): Option[] {
  const key = read + allowed;
  const known = MISTAKEN.get(key);
  if (known) return known;
  const capital = read.toUpperCase();
  const mayStand = allowed.includes(read) || allowed.includes(capital);
  const found = [...allowed].flatMap((other): Option[] => {
    if (other === read || other === capital || read === '') return [];
    const taken = Math.max(takenFor(read, other), takenFor(capital, other));
    if (taken > 0) return [{ text: other, share: taken * (mayStand ? KNOWN_SIGN : 1) }];
    return DIGITS.includes(other) ? [{ text: other, share: LEAST }] : [];
  });
  MISTAKEN.set(key, found);
  return found;
}

/** A decimal mark is the smallest sign of all: any number without one may have lost it. */
function withPoints(found: readonly Spelt[], length: number): Spelt[] {
  if (length > 5) return best(found);
  const pointed = found.slice(0, 3).flatMap(({ text, share }) => {
    // nobody prints 120.0, and a nought before a figure was always before a point
    if (!/^\d{1,3}[1-9]$/.test(text)) return [];
    return [...text].slice(text.length > 2 ? 1 : 0).map((_, i, rest) => ({
      text: `${text.slice(0, text.length - rest.length + i)}.${text.slice(text.length - rest.length + i)}`,
      share: share * UNSEEN_POINT,
    }));
  });
  return best([...found, ...pointed]);
}

function best(found: readonly Spelt[]): Spelt[] {
  const shares = new Map<string, number>();
  for (const { text, share } of found) shares.set(text, (shares.get(text) ?? 0) + share);
  return [...shares]
    .map(([text, share]) => ({ text, share }))
    .toSorted((a, b) => b.share - a.share)
    .slice(0, MOST_WAYS);
}
