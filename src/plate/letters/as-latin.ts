import { CYRILLIC_LOOKS } from '../../words/cyrillic-looks.ts';

/** What a reader of Latin letters sees in letters of other scripts and with marks of their own. */
const LOOKS: Readonly<Record<string, string>> = {
  ...CYRILLIC_LOOKS,
  ł: 'l',
  ø: 'o',
  ß: 'ss',
  ı: 'i',
  đ: 'd',
  æ: 'ae',
  œ: 'oe',
  '№': 'No',
  Ø: 'Ø',
};

/**
 * A label as a reader of Latin letters gives it back: no accents, no blanks, no full stops, look-alikes for the letters it does
 * not know.
 */
export function asLatin(label: string): string {
  const bare = label.normalize('NFD').replace(/[̀-ͯ]/g, '').replace(/[\s.]/g, '');
  return [...bare].map((c) => LOOKS[c] ?? LOOKS[c.toLowerCase()] ?? c).join('');
}
