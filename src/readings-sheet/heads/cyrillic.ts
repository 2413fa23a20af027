import { CYRILLIC_LOOKS } from '../../words/cyrillic-looks.ts';

/** In headings, small and often by hand, these look otherwise than on plates. */
const IN_HEADINGS: Readonly<Record<string, string>> = { и: 'n', й: 'n', ч: '4', ы: 'bl' };

/** A word in Cyrillic letters as it is read for Latin ones; other letters stay as they are. */
export const asLatin = (text: string): string =>
  [...text].map((letter) => IN_HEADINGS[letter] ?? CYRILLIC_LOOKS[letter]?.toLowerCase() ?? letter).join('');
