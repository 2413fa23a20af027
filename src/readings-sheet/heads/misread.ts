/** Characters that are taken for each other in small or blurred print, by hand or between brackets. */
const LOOK_ALIKE = [
  'l1i|!/[](){}jtf',
  'lu',
  '0oqd',
  'o°',
  '2z',
  '5s',
  '8b',
  '6b',
  '9g',
  'ce',
  'ae',
  'a4',
  'vu',
  'wv',
  'hn',
  'nm',
  'hb',
  'mw',
  'gq',
  '3?*°’\'"”“®>s82',
  '-—–_~=.',
  '%7x',
];

const ALIKE = new Map<string, string>();
for (const group of LOOK_ALIKE) for (const letter of group) ALIKE.set(letter, (ALIKE.get(letter) ?? '') + group);

/** A character taken for one that looks like it costs this part of one taken for any other. */
const CONFUSED = 0.3;
/** So does a stroke, a dash or a point that was passed over. */
const SLIGHT = '-—–_.,/|()[]{}·';

/** How bad it is to read one character for another, 0..1. */
export const misread = (a: string, b: string): number => (a === b ? 0 : ALIKE.get(a)?.includes(b) ? CONFUSED : 1);
/** How bad it is to lose a character, or to see one that is not there, 0..1. */
export const lost = (a: string): number => (SLIGHT.includes(a) ? CONFUSED : 0.8);

/**
 * How far a text is from what it was meant to be, letter by letter, look-alikes counting little.
 * @returns 0 for the same text, about 1 for each letter that is another
 */
export function misreadings(read: string, meant: string): number {
  let last = [0];
  for (let j = 0; j < meant.length; j++) last.push(last[j]! + lost(meant[j]!));
  for (let i = 0; i < read.length; i++) {
    const row = [last[0]! + lost(read[i]!)];
    for (let j = 0; j < meant.length; j++)
      row.push(
        Math.min(last[j + 1]! + lost(read[i]!), row[j]! + lost(meant[j]!), last[j]! + misread(read[i]!, meant[j]!)),
      );
    last = row;
  }
  return last[meant.length]!;
}
