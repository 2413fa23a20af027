import type { WordRead } from '../../words/word-reader.ts';
import type { Word } from './chains.ts';
import type { Piece } from './pieces.ts';
import type { ScaleLabel } from './scale-fit.ts';
import type { Surroundings } from './surroundings.ts';
import type { Side } from './tick-groups.ts';
import { tickNumbers } from './tick-number.ts';

/** A label with its word and what was read. */
export type TickLabel = ScaleLabel & { readonly word: Word; readonly text: string };

const height = (p: Piece) => p.y1 - p.y0;

/** The digits of a word, and how many of them stand behind a small mark at the base line; undefined where none is seen. */
export function lookForMark(word: Word): { digits: readonly Piece[]; after: number | undefined } {
  const digits = word.pieces.filter((p) => height(p) > 0.7 * word.size);
  if (!digits.length) return { digits, after: undefined };
  const base = Math.max(...digits.map((p) => p.y1));
  const marks = word.pieces.filter(
    (p) =>
      height(p) < 0.5 * word.size &&
      p.x1 - p.x0 < 0.42 * word.size &&
      p.y1 > base - 0.22 * word.size &&
      p.y0 > base - 0.42 * word.size,
  );
  if (marks.length !== 1) return { digits, after: undefined };
  const x = (marks[0]!.x0 + marks[0]!.x1) / 2;
  const after = digits.filter((p) => p.x0 > x - 1).length;
  return { digits, after: after > 0 && after <= 3 ? after : undefined };
}

/** What was read of one label, as numbers, at its place along the side. */
export function tickLabel(all: Surroundings, side: Side, word: Word, read: WordRead): TickLabel {
  const { frame } = all;
  const { digits, after } = lookForMark(word);
  const count = (read.text.match(/\d/g) ?? []).length;
  const numbers = tickNumbers(withPower(read), digits.length === count ? after : undefined);
  // points and commas hang below the digits and would shift the middle
  const box = digits.length ? digits : word.pieces;
  const middle = (Math.min(...box.map((p) => p.y0)) + Math.max(...box.map((p) => p.y1))) / 2;
  const at =
    side === 'left' || side === 'right'
      ? 1 - (middle - frame.y0) / (frame.y1 - frame.y0)
      : ((word.x0 + word.x1) / 2 - frame.x0) / (frame.x1 - frame.x0);
  return { at, numbers, confidence: Math.max(0.05, read.confidence), word, text: read.text };
}

/** "10" with a small raised figure behind it is a power of ten. */
function withPower({ text, glyphs }: WordRead): string {
  if (!/^10\d$/.test(text) || glyphs.length !== 3) return text;
  const [one, nought, raised] = glyphs as [WordRead['glyphs'][0], WordRead['glyphs'][0], WordRead['glyphs'][0]];
  const tall = nought.y1 - nought.y0;
  const isRaised = raised.y1 < nought.y1 - 0.3 * tall && raised.y1 - raised.y0 < 0.8 * tall;
  return isRaised ? `${one.text}${nought.text}^${raised.text}` : text;
}
