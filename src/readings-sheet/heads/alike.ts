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

/** Fewest letters to change, add or leave out. Source: V. Levenshtein, Soviet Physics Doklady 10 (1966) 707. */
export function changes(a: string, b: string): number {
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++)
      row[j] = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    last = row;
  }
  return last[b.length]!;
}

/** Names up to this long must be right letter by letter. */
const EXACT = 3;
const LEAST_ALIKE = 0.72;

/**
 * How surely a name stands in a text, 0..1: blanks do not count, a letter in four may be misread, and the more of the
 * text the name explains the surer.
 */
export function nameIn(name: string, text: string): number {
  const words = plainWords(text).split(' ');
  const wanted = plainWords(name).replaceAll(' ', '') || name;
  const whole = words.join('').length || 1;
  let best = 0;
  for (let from = 0; from < words.length; from++)
    for (let to = from + 1; to <= Math.min(words.length, from + 5); to++) {
      const some = words.slice(from, to).join('');
      if (Math.abs(some.length - wanted.length) > 0.3 * wanted.length) continue;
      const alike = 1 - changes(some, wanted) / Math.max(some.length, wanted.length);
      if (wanted.length <= EXACT ? alike < 1 : alike < LEAST_ALIKE) continue;
      best = Math.max(best, alike * (0.45 + 0.55 * (some.length / whole)));
    }
  return best;
}
