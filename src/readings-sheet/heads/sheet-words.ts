import type { WordReader } from '../../words/word-reader.ts';
import { findLines, flatGrey, readBoxes, type ReadWord, type Surface, type TextLine } from '../../writing/index.ts';
import type { WrittenGrid } from '../grid/written-grid.ts';
import type { TableSurface } from '../table/table-surface.ts';

/** Words of one line of text, from left to right; flat pixels of the table's surface. */
export type SheetLine = { readonly words: readonly ReadWord[]; readonly y: number };

/** A header reaches so far up from the readings, row heights: a name and a unit over each other. */
const HEADER = 2.2;

/** Print is this high, row heights. */
const isLetterHigh = (height: number): boolean => height > 0.12 && height < 1.1;
/**
 * What the sheet lies on may look like more lines than a sheet has: the head's are near the table,
 * and about as sharp and high as the header's.
 */
const MOST_HEAD_LINES = 16;
const MOST_HEADER_LINES = 24;
/** What is no header under it shows by a few words. */
const MOST_READING_LINES = 15;
const LEAST_WORTH = 0.3;

/** The first readings are read as words too: what reads as words there is none. */
const READINGS = 3;

/** Reads the print above the readings, and what was taken for the first of them. */
export async function sheetWords(table: TableSurface, grid: WrittenGrid, words: WordReader): Promise<SheetLine[]> {
  const { surface } = table;
  const part: Surface = { ...surface, height: Math.ceil(grid.ys[READINGS]! + 0.1 * grid.pitch) };
  const { lines, ruled } = findLines(flatGrey(part));
  const isRuled = (x: number, y: number) => ruled[Math.round(y) * part.width + Math.round(x)] === 1;
  return asLines(await readBoxes(part, sheetLines(lines, table, grid), words, isRuled));
}

/** Lines of words from the top down, those that could not be read left out. */
const asLines = (read: readonly (readonly ReadWord[])[]): SheetLine[] =>
  read
    .filter((list) => list.length > 0)
    .map((list) => ({ words: list, y: list.reduce((s, w) => s + (w.y0 + w.y1) / 2, 0) / list.length }))
    .sort((a, b) => a.y - b.y);

/** The lines that are print of the sheet: beside nothing but the table, and like its header's. */
function sheetLines(lines: readonly TextLine[], { xs }: TableSurface, grid: WrittenGrid): TextLine[] {
  const { pitch } = grid;
  const top = grid.ys[0]! - HEADER * pitch;
  const [left, right] = [Math.min(xs[0]!, grid.xs[0]!), Math.max(xs.at(-1)!, grid.xs.at(-1)!)];
  const dark = lines
    .filter(({ isLight, y0, y1 }) => !isLight && isLetterHigh((y1 - y0) / pitch))
    .filter(({ x0, x1 }) => x1 > left - pitch && x0 < right + pitch);
  const header = dark.filter(({ y1 }) => y1 > top);
  const middle = (list: number[]) => list.sort((a, b) => a - b)[list.length >> 1] ?? 0;
  const usual = middle(header.map(({ worth, letters }) => worth / Math.sqrt(letters.length)));
  const high = middle(header.map(({ y0, y1 }) => y1 - y0));
  const near = (some: readonly TextLine[], most: number) => some.toSorted((a, b) => b.y1 - a.y1).slice(0, most);
  const head = dark
    .filter(({ y1 }) => y1 <= top)
    .filter(({ y0, y1 }) => y1 - y0 > 0.38 * high && y1 - y0 < 2.5 * high)
    .filter(({ worth, letters }) => worth / Math.sqrt(letters.length) > LEAST_WORTH * usual);
  const isReading = ({ y0, y1 }: TextLine) => (y0 + y1) / 2 > grid.ys[0]!;
  const readings = header.filter(isReading).toSorted((a, b) => a.y0 - b.y0);
  return [
    ...near(
      header.filter((line) => !isReading(line)),
      MOST_HEADER_LINES,
    ),
    ...readings.slice(0, MOST_READING_LINES),
    ...near(head, MOST_HEAD_LINES),
  ];
}
