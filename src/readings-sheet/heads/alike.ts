import { misreadings } from './misread.ts';

/** Letters without accents and capitals, everything else a blank: what names are compared by. */
export const plainWords = (text: string): string =>
  text
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ł', 'l')
    .replaceAll('ı', 'i')
    .replaceAll('ø', 'o')
    .replaceAll('æ', 'ae')
    .replaceAll('ß', 'ss')
    .replaceAll(/[^\p{L}\d#]+/gu, ' ')
    .trim();

/** Some words in a row without the blanks between them, and what share of the whole text they are. */
type Passage = { readonly letters: string; readonly share: number };

const LONGEST_NAME = 5;

/** Every passage of a text that may be a name. */
export function passagesOf(text: string): Passage[] {
  const words = plainWords(text).split(' ');
  const whole = words.join('').length || 1;
  return words.flatMap((_, from) =>
    words.slice(from, from + LONGEST_NAME).map((_, more) => {
      const letters = words.slice(from, from + more + 1).join('');
      return { letters, share: letters.length / whole };
    }),
  );
}

/** A name as it is compared: plain letters only. */
export const plainName = (name: string): string => plainWords(name).replaceAll(' ', '') || name;

/** Names up to three letters must be right letter by letter, up to five but for one in five; one look-alike does by itself. */
const leastAlike = (length: number, share: number): number =>
  length <= 3 ? (share === 1 ? 1 - 0.31 / length : 1) : length <= 5 ? 0.8 : 0.72;

/**
 * How surely one of some names stands in a text, 0..1: a letter in four may be misread, and the more of the text the
 * name explains the surer.
 * @param names as `plainName` makes them
 */
export function nameAmong(names: readonly string[], passages: readonly Passage[]): number {
  let best = 0;
  for (const { letters, share } of passages) {
    const explained = 0.45 + 0.55 * share;
    for (const name of names) {
      const longer = Math.max(letters.length, name.length);
      // no letter has to be compared where even the lengths say that it cannot be better
      if (explained * (1 - Math.abs(letters.length - name.length) / longer) <= best) continue;
      const alike = letters === name ? 1 : 1 - misreadings(letters, name) / longer;
      if (alike >= leastAlike(name.length, share)) best = Math.max(best, alike * explained);
    }
  }
  return best;
}
