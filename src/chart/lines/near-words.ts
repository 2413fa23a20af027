import { toSheet } from '../sheet.ts';
import type { StraightenedChart } from '../straightened-chart.ts';
import type { TracedCurve } from '../trace/trace.ts';
import type { SheetBox } from './line-seeds.ts';
import { meaningOfWord, type WordMeaning } from './word-meanings.ts';

/** A word in or near the plot, in shares of the frame. */
export type PrintedWord = {
  readonly text: string;
  readonly confidence: number;
  readonly box: { readonly u0: number; readonly v0: number; readonly u1: number; readonly v1: number };
  readonly isInside: boolean;
};

/** A word with its box on the sheet and what it says. */
export type UnderstoodWord = WordMeaning & PrintedWord & { readonly on: SheetBox };

/** Where a word stands on the sheet. Source: definition. */
export function boxOnSheet({ sheet }: StraightenedChart, { box }: PrintedWord): SheetBox {
  const [left, bottom] = toSheet(sheet, box.u0, box.v0);
  const [right, top] = toSheet(sheet, box.u1, box.v1);
  return { left, top, right, bottom };
}

/** Says what each word means. Source: definition. */
export const understood = (chart: StraightenedChart, words: readonly PrintedWord[]): UnderstoodWord[] =>
  words.map((word) => ({ ...word, ...meaningOfWord(word.text), on: boxOnSheet(chart, word) }));

/** Distance from a word's box to a line, and whether the word stands at the line's end; sheet pixels. */
export function distanceToLine(word: UnderstoodWord, { trace: { x, y } }: TracedCurve): number {
  let least = Infinity;
  const { left, right, top, bottom } = word.on;
  for (let i = 0; i < x.length; i++) {
    const dx = Math.max(left - x[i]!, 0, x[i]! - right);
    const dy = Math.max(top - y[i]!, 0, y[i]! - bottom);
    least = Math.min(least, Math.hypot(dx, dy));
  }
  return least;
}
