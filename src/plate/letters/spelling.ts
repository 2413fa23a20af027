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

/** What an exact spelling of a text is worth at most. */
export function mostOf(text: string): number {
  let sum = 0;
  for (const character of text) if (!SMALL.has(character) && !FOREIGN.has(character)) sum += Math.log(ALPHABET);
  return Math.max(sum, Math.log(ALPHABET));
}

/**
 * How much likelier these characters are where a text was printed than where anything was.
 * @returns natural logarithm of the likelihood ratio, by the best way to lay the text along the characters
 * Source: string alignment by dynamic programming (Needleman & Wunsch 1970), each step scored by `takenFor`.
 */
export function spelling(marks: readonly Mark[], text: string): number {
  const wanted = [...text];
  let before = wanted.reduce<number[]>((row, c) => [...row, row.at(-1)! + missing(c)], [0]);
  for (const mark of marks) {
    const extra = SMALL.has(mark.options[0]!.text) ? SMALL_OFF : EXTRA;
    const row = [before[0]! + extra];
    for (let j = 1; j <= wanted.length; j++) {
      row.push(
        Math.max(
          before[j - 1]! + match(mark, wanted[j - 1]!),
          before[j]! + extra,
          row[j - 1]! + missing(wanted[j - 1]!),
        ),
      );
    }
    before = row;
  }
  return before.at(-1)!;
}

const missing = (character: string): number =>
  SMALL.has(character) ? SMALL_OFF : FOREIGN.has(character) ? 2 * SMALL_OFF : MISSING;

const MATCHES = new WeakMap<Mark, Map<string, number>>();

/** Each character of a plate is held against hundreds of labels: its worth for each letter is worked out once. */
function match(mark: Mark, wanted: string): number {
  let known = MATCHES.get(mark);
  if (!known) MATCHES.set(mark, (known = new Map()));
  let worth = known.get(wanted);
  if (worth === undefined) known.set(wanted, (worth = worthOf(mark, wanted)));
  return worth;
}

function worthOf(mark: Mark, wanted: string): number {
  let likelihood = FOREIGN.has(wanted) ? FOREIGN_AS_ANYTHING / ALPHABET : ODD / ALPHABET;
  let left = 1;
  for (const { text, share } of mark.options) {
    likelihood += share * alike(text, wanted);
    left -= share;
  }
  // what the readings leave open may be anything
  likelihood += Math.max(left, 0) / ALPHABET;
  const worth = SMALL.has(wanted) ? 1.2 : ALPHABET;
  return Math.log(Math.min(likelihood, 1) * worth);
}

/** Large and small letters are the same letter on most plates, but not quite. */
function alike(read: string, wanted: string): number {
  if (read === wanted) return 1;
  const folded = read.toLowerCase() === wanted.toLowerCase() ? 0.8 : 0;
  return Math.max(
    folded,
    takenFor(read, wanted),
    0.8 * takenFor(read.toLowerCase(), wanted),
    0.8 * takenFor(read.toUpperCase(), wanted),
  );
}
