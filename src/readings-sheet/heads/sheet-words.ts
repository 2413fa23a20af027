import type { WordReader } from '../../words/word-reader.ts';
import { findLines, flatGrey, readBoxes, type ReadWord, type Surface, type TextLine } from '../../writing/index.ts';
import { stepAt, type TableSurface } from '../table/table-surface.ts';

/** Words of one line of text, from left to right; flat pixels of the table's surface. */
export type SheetLine = { readonly words: readonly ReadWord[]; readonly y: number };

/** Lines of text are looked for this many rows down: headers are one row, or a name and a unit over each other. */
const HEADER_ROWS = 2;

/** Print is this high, row heights. */
const isLetterHigh = (height: number): boolean => height > 0.12 && height < 1.1;
/**
 * What the sheet lies on may look like more lines than a sheet has: the head's are near the table,
 * and about as sharp and high as the header's.
 */
const MOST_HEAD_LINES = 16;
const LEAST_WORTH = 0.3;

/** Reads the print above the table and in its first rows. */
export async function sheetWords(table: TableSurface, words: WordReader): Promise<SheetLine[]> {
  const { surface, ys } = table;
  const bottom = ys[Math.min(HEADER_ROWS, ys.length - 1)]! + 0.1 * table.rowHeight;
  const part: Surface = { ...surface, height: Math.ceil(bottom) };
  const { lines, ruled } = findLines(flatGrey(part));
  const isRuled = (x: number, y: number) => ruled[Math.round(y) * part.width + Math.round(x)] === 1;
  return asLines(await readBoxes(part, sheetLines(lines, table), words, isRuled));
}

/** Lines of words from the top down, those that could not be read left out. */
export const asLines = (read: readonly (readonly ReadWord[])[]): SheetLine[] =>
  read
    .filter((list) => list.length > 0)
    .map((list) => ({ words: list, y: list.reduce((s, w) => s + (w.y0 + w.y1) / 2, 0) / list.length }))
    .sort((a, b) => a.y - b.y);

/** The lines that are print of the sheet. */
function sheetLines(lines: readonly TextLine[], { xs, ys, rowHeight }: TableSurface): TextLine[] {
  const dark = lines.filter(({ isLight, y0, y1 }) => !isLight && isLetterHigh((y1 - y0) / rowHeight));
  const header = dark.filter(({ y1 }) => y1 > ys[0]!);
  const middle = (list: number[]) => list.sort((a, b) => a - b)[list.length >> 1] ?? 0;
  const usual = middle(header.map(({ worth, letters }) => worth / Math.sqrt(letters.length)));
  const high = middle(header.map(({ y0, y1 }) => y1 - y0));
  const [left, right] = [xs[0]!, xs[xs.length - 1]!];
  const head = dark
    .filter(({ y1 }) => y1 <= ys[0]!)
    .filter(({ x0, x1 }) => x1 > left && x0 < right)
    .filter(({ y0, y1 }) => y1 - y0 > 0.5 * high && y1 - y0 < 2.5 * high)
    .filter(({ worth, letters }) => worth / Math.sqrt(letters.length) > LEAST_WORTH * usual)
    .toSorted((a, b) => b.y1 - a.y1)
    .slice(0, MOST_HEAD_LINES);
  return [...header, ...head];
}

/** What stands in each cell of one row, line by line from the top down. A line over several cells is parted. */
export function linesInRow(lines: readonly SheetLine[], { xs, ys }: TableSurface, row: number): string[][] {
  const cells: string[][] = xs.slice(1).map(() => []);
  for (const { words, y } of lines) {
    if (y < ys[row]! || y >= ys[row + 1]!) continue;
    const parts = new Map<number, string[]>();
    for (const { text, x0, x1 } of words) {
      const middle = (x0 + x1) / 2;
      if (middle < xs[0]! || middle > xs[xs.length - 1]!) continue;
      const column = stepAt(xs, middle);
      parts.set(column, [...(parts.get(column) ?? []), text]);
    }
    for (const [column, texts] of parts) cells[column]!.push(texts.join(' '));
  }
  return cells;
}
