import { takenFor } from '../tables/confusions.ts';
import type { Mark } from './marks.ts';

/** Of about this many characters any may stand anywhere: what a match is worth, as a likelihood ratio. */
const ALPHABET = 40;
/** A character nobody expects here: some damage, some stain. */
const ODD = 0.006;
const EXTRA = Math.log(0.08);
const MISSING = Math.log(0.11);
/** Small signs that readers often lose or see where a speck is: they count for little either way. */
const SMALL = new Set(`.,:;'"°·-_*^`);
const SMALL_OFF = Math.log(0.7);
/** Signs outside the reader's alphabet come out as one or two characters of anything. */
const FOREIGN = new Set('φϕηΔ⁻¹²³µØ√');
const FOREIGN_AS_ANYTHING = 0.5;
/** What such a sign says, in letters. */
const FOREIGN_COUNTS = 0.5;

/** A text made ready to be compared with characters: each of its letters by its number, and what leaving it out costs. */
export type Wanted = { readonly letters: Uint8Array; readonly missing: Float64Array; readonly most: number };

const NUMBERS = new Map<string, number>();
const ROOM = 256;

/** Makes a text ready for `spelling`. @throws RangeError beyond 256 different characters in all texts together */
export function wanted(text: string): Wanted {
  const characters = [...text];
  for (const character of characters) if (!NUMBERS.has(character)) NUMBERS.set(character, NUMBERS.size);
  if (NUMBERS.size > ROOM) throw new RangeError(`texts: expected at most ${ROOM} characters, received ${NUMBERS.size}`);
  return {
    letters: Uint8Array.from(characters, (c) => NUMBERS.get(c)!),
    missing: Float64Array.from(characters, missing),
    most: mostOf(characters),
  };
}

/** What an exact spelling of a text is worth at most. */
function mostOf(characters: readonly string[]): number {
  const counted = characters.reduce((sum, c) => sum + (SMALL.has(c) ? 0 : FOREIGN.has(c) ? FOREIGN_COUNTS : 1), 0);
  return Math.max(counted, 1) * Math.log(ALPHABET);
}

/**
 * How much likelier these characters are where a text was printed than where anything was.
 * @returns natural logarithm of the likelihood ratio, by the best way to lay the text along the characters
 * Source: string alignment by dynamic programming (Needleman & Wunsch 1970), each step scored by `takenFor`.
 */
export function spelling(marks: readonly Mark[], { letters, missing: cost }: Wanted, count = letters.length): number {
  let before = new Float64Array(count + 1);
  let row = new Float64Array(count + 1);
  for (let j = 0; j < count; j++) before[j + 1] = before[j]! + cost[j]!;
  for (const mark of marks) {
    const worth = worthsOf(mark);
    const extra = SMALL.has(mark.options[0]!.text) ? SMALL_OFF : EXTRA;
    row[0] = before[0]! + extra;
    for (let j = 0; j < count; j++)
      row[j + 1] = Math.max(before[j]! + worth(letters[j]!), before[j + 1]! + extra, row[j]! + cost[j]!);
    [before, row] = [row, before];
  }
  return before[count]!;
}

const missing = (character: string): number =>
  SMALL.has(character) ? SMALL_OFF : FOREIGN.has(character) ? 2 * SMALL_OFF : MISSING;

const WORTHS = new WeakMap<Mark, (letter: number) => number>();

/** Each character of a plate is held against hundreds of labels: its worth for each letter is worked out once. */
function worthsOf(mark: Mark): (letter: number) => number {
  const known = WORTHS.get(mark);
  if (known) return known;
  const worths = new Float64Array(ROOM).fill(NaN);
  const names = [...NUMBERS.keys()];
  const worth = (letter: number): number => {
    const value = worths[letter]!;
    return Number.isNaN(value) ? (worths[letter] = worthOf(mark, names[letter]!)) : value;
  };
  WORTHS.set(mark, worth);
  return worth;
}

function worthOf(mark: Mark, letter: string): number {
  let likelihood = (FOREIGN.has(letter) ? FOREIGN_AS_ANYTHING : ODD) / ALPHABET;
  let left = 1;
  for (const { text, share } of mark.options) {
    likelihood += share * alike(text, letter);
    left -= share;
  }
  // what the readings leave open may be anything
  likelihood += Math.max(left, 0) / ALPHABET;
  const worth = SMALL.has(letter) ? 1.2 : ALPHABET;
  return Math.log(Math.min(likelihood, 1) * worth);
}

/** Large and small letters are the same letter on most plates, but not quite. */
function alike(read: string, letter: string): number {
  if (read === letter) return 1;
  const [small, capital] = [read.toLowerCase(), read.toUpperCase()];
  const folded = small === letter.toLowerCase() ? 0.8 : 0;
  return Math.max(folded, takenFor(read, letter), 0.8 * takenFor(small, letter), 0.8 * takenFor(capital, letter));
}
