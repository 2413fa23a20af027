import type { WrittenGrid } from '../grid/written-grid.ts';
import type { ReadWord } from '../../writing/index.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { headCells } from './head-cells.ts';
import { nameColumns, type NamedColumn } from './name-columns.ts';
import type { SheetLine } from './sheet-words.ts';

/** What stands over the columns, the table with its header as first row, and whether no row fits in between. */
export type Header = {
  readonly table: TableSurface;
  readonly columns: readonly NamedColumn[];
  readonly isFirstSure: boolean;
  readonly grid: WrittenGrid;
};

/** A header has up to so many rows of words, and reaches so far up, row heights. */
const MOST_ROWS = 3;
const HIGHEST = 4;
/** A further row must name the columns better by this on average: it may be what stands over the table. */
const FURTHER = 0.03;

/** Further below the header than this, row heights, the first row may be the second; right under a ruling it is not. */
const ROOM = 1.6;
const RIGHT_UNDER = 0.25;

/** How well columns are named on average, 0..1. */
export const surenessOf = (columns: readonly NamedColumn[]): number =>
  columns.reduce((s, c) => s + c.sureness, 0) / Math.max(1, columns.length);

/** The header is the row of words over the readings, or the two or three that name the columns best together. */
export function headerOf(table: TableSurface, found: WrittenGrid, lines: readonly SheetLine[]): Header {
  const grid = withFirstRow(found, lines);
  const top = grid.ys[0]!;
  const rows = rowsOver(lines, top).filter(({ y }) => top - y < HIGHEST * grid.pitch);
  const sides = { xs: grid.xs, drawn: table.drawn.xs };
  let best: { columns: readonly NamedColumn[]; from: number; worth: number } | null = null;
  for (let count = 1; count <= Math.min(MOST_ROWS, rows.length); count++) {
    const some = rows.slice(-count);
    const cells = some.map(({ words }) => headCells(words, sides));
    const columns = nameColumns(grid.xs.slice(1).map((_, c) => cells.map((row) => row[c]!).filter(Boolean)));
    const worth = surenessOf(columns) - FURTHER * count;
    if (best && worth <= best.worth) continue;
    best = {
      columns,
      from: Math.min(...some[0]!.words.map(({ y0, capitalHeight }) => y0 - 0.3 * capitalHeight)),
      worth,
    };
  }
  const below = rows.at(-1);
  const isUnderRuling = table.drawn.ys.some((y) => Math.abs(y - top) < RIGHT_UNDER * grid.pitch);
  return {
    grid,
    isFirstSure: below !== undefined && (isUnderRuling || top + grid.pitch / 2 - below.y < ROOM * grid.pitch),
    table: {
      ...table,
      xs: grid.xs,
      ys: [Math.max(0, best?.from ?? top - grid.pitch), ...grid.ys],
      rowHeight: grid.pitch,
    },
    columns: best?.columns ?? nameColumns(grid.xs.slice(1).map(() => [])),
  };
}

/** A row over the readings is one of them when so much of it reads as numbers. */
const NUMBERS = 0.6;

/** The readings with the row above them that reads as numbers and not as a header: a fold may have hidden its figures. */
function withFirstRow(grid: WrittenGrid, lines: readonly SheetLine[]): WrittenGrid {
  const top = grid.ys[0]!;
  const row = rowsOver(lines, top).at(-1);
  if (!row || row.y < top - grid.pitch || row.words.length < 2) return grid;
  const numbers = row.words.filter(({ text }) => /^[\d.,]*\d[\d.,]*$/.test(text)).length;
  if (numbers < NUMBERS * row.words.length) return grid;
  return { ...grid, ys: [top - grid.pitch, ...grid.ys], isDoubtful: [false, ...grid.isDoubtful] };
}

/** Rows of words over a height, from the top down, each from left to right. */
function rowsOver(lines: readonly SheetLine[], top: number): { y: number; words: ReadWord[] }[] {
  const rows: { y: number; words: ReadWord[] }[] = [];
  const middle = ({ y0, y1 }: ReadWord) => (y0 + y1) / 2;
  const words = lines.flatMap((line) => line.words).filter((word) => middle(word) < top);
  for (const word of words.toSorted((a, b) => middle(a) - middle(b))) {
    const last = rows.at(-1);
    if (last && middle(word) - last.y < 0.6 * word.capitalHeight) {
      last.words.push(word);
      last.y = last.words.reduce((sum, w) => sum + middle(w), 0) / last.words.length;
    } else rows.push({ y: middle(word), words: [word] });
  }
  return rows.map(({ y, words }) => ({ y, words: words.sort((a, b) => a.x0 - b.x0) }));
}
