import type { Mark } from '../letters/marks.ts';
import { spelling, wanted } from '../letters/spelling.ts';
import { nearInLength, PHRASES, type Meaning, type Phrase } from './phrases.ts';

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

/** Units of so few letters are one word. */
export const SHORT_UNIT = 3;

/** Full stops and brackets say nothing in a label, and are the first thing lost. */
const withoutStops = (marks: readonly Mark[]) => marks.filter((mark) => !'.:,;()[]{}'.includes(mark.options[0]!.text));

type Likeness = { phrase: Phrase; margin: number };

/**
 * The phrase some characters are most like.
 * @param isBehind right behind a number, where a unit is expected
 * @param isWord the characters stand in one word
 * @returns null where they are like none
 */
export function bestOf(marks: readonly Mark[], isBehind: boolean, isWord: boolean) {
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
  // metres, hours and what looks like volts in Cyrillic are letters like others, but behind a number
  if (
    phrase.length === 1 &&
    phrase.isUnit &&
    !isBehind &&
    (phrase.isLookAlike || phrase.meanings[0]!.field === 'other')
  )
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
