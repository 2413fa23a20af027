import { boxOf, type Word } from './chains.ts';
import type { Surroundings } from './surroundings.ts';
import type { Side } from './tick-groups.ts';
import { tickLabel, type TickLabel } from './tick-labels.ts';

/** The blank between thousands and hundreds is no wider than this, letter heights. */
const WIDEST_BLANK = 1.1;
const IN_ROW = 0.3;

/**
 * Labels that may be the two halves of a number with a blank in it, "1" and "500", once more as the whole.
 * @returns the labels with the wholes behind them: which of them the scale believes, the others tell (see `withoutHalves`)
 */
export function withWholes(all: Surroundings, side: Side, labels: readonly TickLabel[]): TickLabel[] {
  const wholes = labels.flatMap((a) => {
    const b = labels.find((other) => isThousandsOf(a, other));
    if (!b) return [];
    const read = { text: `${a.text} ${b.text}`, confidence: Math.min(a.confidence, b.confidence), glyphs: [] };
    return [tickLabel(all, side, joined(a.word, b.word), read)];
  });
  return [...labels, ...wholes];
}

/** The labels without the halves of those that are believed. @param isBelieved by its place in the list */
export function withoutHalves(labels: readonly TickLabel[], isBelieved: (index: number) => boolean): TickLabel[] {
  const believed = labels.filter((_, i) => isBelieved(i));
  const isPart = (l: TickLabel, whole: TickLabel): boolean =>
    whole !== l && l.word.pieces.every((p) => whole.word.pieces.includes(p));
  return labels.filter((l) => !believed.some((whole) => isPart(l, whole)));
}

function isThousandsOf(a: TickLabel, b: TickLabel): boolean {
  if (!/^\d{1,3}$/.test(a.text) || !/^\d{3}$/.test(b.text) || a.text.startsWith('0')) return false;
  const gap = b.word.x0 - a.word.x1;
  const size = Math.max(a.word.size, b.word.size);
  return gap > 0 && gap < WIDEST_BLANK * size && Math.abs(a.word.y1 - b.word.y1) < IN_ROW * size;
}

const joined = (a: Word, b: Word): Word => {
  const pieces = [...a.pieces, ...b.pieces];
  return { ...boxOf(pieces), run: 'level', pieces, size: Math.max(a.size, b.size) };
};
