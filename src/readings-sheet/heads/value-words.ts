import type { Unit } from '../../units/units.ts';
import { HEAD_QUANTITIES, type HeadQuantity } from '../quantities.ts';
import { unitAsRead } from './units-as-read.ts';

/** Whether a character is a figure, a point, or a letter that figures are often read as. */
export const isLikeDigit = (letter: string): boolean => /^[\d.,OoIl|SsBZzgq]$/.test(letter);

/** Whether a word may be a number, figures by hand being read as letters: half of it at least looks like figures. */
export function looksLikeNumber(text: string): boolean {
  const letters = [...text].filter((letter) => /[\p{L}\d]/u.test(letter));
  const like = letters.filter(isLikeDigit).length;
  return letters.length > 0 && like >= letters.length / 2 && (like === letters.length || /\d/.test(text) || like > 1);
}

/** The unit among the words behind a name; null where none was read. */
export function unitBehind({
  quantity,
  words,
}: {
  readonly quantity: HeadQuantity;
  readonly words: readonly { readonly text: string }[];
}): Unit | null {
  const { of } = HEAD_QUANTITIES[quantity];
  const texts = words.flatMap(({ text }) => [text, text.replace(/^[\d.,]+/, '')]);
  return (
    texts.map((text) => (text.length > 0 && !/^[\d.,]+$/.test(text) ? unitAsRead(text, of) : null)).find(Boolean) ??
    null
  );
}
