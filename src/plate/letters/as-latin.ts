/** What a reader of Latin letters sees in letters of other scripts and with marks of their own. */
const LOOKS: Readonly<Record<string, string>> = {
  а: 'a',
  б: '6',
  в: 'B',
  г: 'r',
  д: 'n',
  е: 'e',
  ё: 'e',
  ж: 'x',
  з: '3',
  и: 'u',
  й: 'u',
  к: 'k',
  л: 'n',
  м: 'M',
  н: 'H',
  о: 'o',
  п: 'n',
  р: 'p',
  с: 'c',
  т: 'T',
  у: 'y',
  ф: 'o',
  х: 'x',
  ц: 'u',
  ч: 'y',
  ш: 'w',
  щ: 'w',
  ъ: 'b',
  ы: 'bi',
  ь: 'b',
  э: '3',
  ю: 'io',
  я: 'a',
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
