import { CYRILLIC_LOOKS } from '../../words/cyrillic-looks.ts';
import { editDistance } from '../../words/edit-distance.ts';
import type { TitleQuantity } from './title-words.ts';

/** Words of axis titles in Cyrillic letters. The kind of a pressure stands before it, in one of its endings. */
const CYRILLIC_WORDS: readonly (readonly [TitleQuantity, string])[] = [
  ['static_pressure', 'статическое | статический'],
  ['total_pressure', 'полное | полный'],
  ['flow', 'производительность | расход | расход воздуха | объёмный расход'],
  ['shaft_power', 'мощность | потребляемая мощность'],
  ['pressure', 'давление'],
];

/** How surely words in letters the reader does not know mean what they look like. */
const SURENESS = 0.9;
/** Of so many letters one may be read as something not thought of; shorter words say too little. */
const LETTERS_A_SLIP = 5;
const SHORTEST = 6;

/**
 * Letters that look alike to a reader, one for each kind: п, л, и, н are all two upright strokes and what joins them, of
 * which it sees "n", "II", "JI" or "H".
 */
const folded = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '')
    .replace(/[il1jt]{2}|[il1jhu]/g, 'n')
    .replace(/[qdg0]/g, 'o')
    .replace(/[6]/g, 'b')
    .replace(/[4]/g, 'y');

const latin = (word: string): string => [...word].map((letter) => CYRILLIC_LOOKS[letter] ?? letter).join('');

const PHRASES = CYRILLIC_WORDS.flatMap(([quantity, words]) =>
  words.split(' | ').map((word) => ({ quantity, folded: folded(latin(word)) })),
).sort((a, b) => b.folded.length - a.folded.length);

/**
 * What a title in Cyrillic letters means, by how its words look to a reader of Latin ones: "IIpou3BoguTeIbHOCTb" is flow.
 * @returns null where nothing looks like a word of the table
 */
export function byCyrillic(text: string): { quantity: TitleQuantity; sureness: number } | null {
  const tokens = text.split(/[\s,;()[\]]+/).filter(Boolean);
  for (const { quantity, folded: phrase } of PHRASES) {
    if (phrase.length < SHORTEST) continue;
    for (let i = 0; i < tokens.length; i++)
      // a word may be read as two
      for (let n = 1; n <= 3 && i + n <= tokens.length; n++) {
        const some = folded(tokens.slice(i, i + n).join(''));
        if (Math.abs(some.length - phrase.length) > phrase.length / LETTERS_A_SLIP) continue;
        const slips = editDistance(some, phrase);
        if (slips <= Math.floor(phrase.length / LETTERS_A_SLIP))
          return { quantity, sureness: SURENESS * (1 - slips / phrase.length) };
      }
  }
  return null;
}
