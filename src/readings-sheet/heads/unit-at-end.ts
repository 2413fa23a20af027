import { unitCalled } from '../../units/names.ts';
import type { Unit } from '../../units/units.ts';
import { lost, misread } from './misread.ts';
import { UNIT_SPELLINGS } from './unit-spellings.ts';

/**
 * A heading parted into a name, with and without what may be a bracket behind it, and the unit; `likeness` 0..1 of what was
 * read to the unit's spelling of so many letters.
 */
export type Parted = {
  readonly names: readonly string[];
  readonly unit: Unit;
  readonly likeness: number;
  readonly letters: number;
};

/** Less alike is another word; short ones must be read better. */
const leastAlike = (length: number): number => (length <= SHORT ? 0.85 : length === 3 ? 0.8 : 0.7);
/** A unit of one or two letters is one only by itself: behind a blank or a bracket. */
const SHORT = 2;
/** What a unit in the middle of a word loses: headings are read without their blanks, and words end like units. */
const INSIDE = 0.2;
const CLOSING = /[\])}|lIiJj1!.,;:’']/;
/** A bracket, or a stroke that may be one, a blank, a comma, a colon; before a short unit no letter of a word. */
const OPENING_SHORT = /[\s([{|/lI1,;:.-]/;
const OPENING = /[\s([{|/lI1Lif,;:.-]/;

type Spelling = { readonly unit: Unit; readonly letters: string };

const SPELLINGS: readonly Spelling[] = UNIT_SPELLINGS.flatMap(([name, spellings]) =>
  spellings.split(' ').map((letters) => ({ unit: unitCalled(name), letters })),
);

/** Every unit a heading may end with, and the name that then is left; the likeliest spelling of each unit. */
export function unitsAtEnd(heading: string): Parted[] {
  const text = heading.normalize('NFKC').replaceAll('⁄', '/').replaceAll('−', '-').trimEnd();
  const places = [...text].flatMap((letter, at) => (/\s/.test(letter) ? [] : [{ letter: letter.toLowerCase(), at }]));
  const letters = places.map(({ letter }) => letter);
  const closings = CLOSING.test(text.at(-1) ?? '') ? (CLOSING.test(text.at(-2) ?? '') ? 2 : 1) : 0;
  const best = new Map<Unit, Parted>();
  for (const { unit, letters: meant } of SPELLINGS)
    for (let end = letters.length; end >= letters.length - closings; end--) {
      const { from, cost } = bestEnding(letters.slice(0, end), meant);
      const before = from > 0 ? text.slice(places[from - 1]!.at, places[from]?.at ?? text.length) : ' ';
      const isApart = (meant.length <= SHORT ? OPENING_SHORT : OPENING).test(before);
      const likeness = 1 - cost / meant.length - (isApart ? 0 : INSIDE);
      if ((meant.length <= SHORT && !isApart) || likeness < leastAlike(meant.length)) continue;
      if (likeness <= (best.get(unit)?.likeness ?? 0)) continue;
      const name = text.slice(0, places[from]?.at ?? text.length);
      best.set(unit, { names: [withoutOpening(name), name], unit, likeness, letters: meant.length });
    }
  return [...best.values()].sort((a, b) => b.likeness - a.likeness);
}

/** What stands before a unit without the bracket, comma or stroke between them. */
const withoutOpening = (name: string): string => name.trimEnd().replace(/[\s([{|/lI1Lif,;:-]$/, '');

/** Which end of a text is likest a word, and how unlike it is. */
function bestEnding(text: readonly string[], meant: string): { from: number; cost: number } {
  // costs[j]: of the rest of the word against the text from j to its end
  let costs = text.map(() => 0).concat(0);
  for (let j = text.length - 1; j >= 0; j--) costs[j] = costs[j + 1]! + lost(text[j]!);
  for (let i = meant.length - 1; i >= 0; i--) {
    const row = costs.map((cost) => cost + lost(meant[i]!));
    for (let j = text.length - 1; j >= 0; j--)
      row[j] = Math.min(row[j]!, row[j + 1]! + lost(text[j]!), costs[j + 1]! + misread(text[j]!, meant[i]!));
    costs = row;
  }
  const cost = Math.min(...costs);
  return { from: costs.lastIndexOf(cost), cost };
}
