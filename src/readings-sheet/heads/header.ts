import type { WrittenGrid } from '../grid/written-grid.ts';
import type { ReadWord } from '../../writing/index.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { headCells } from './head-cells.ts';
import { nameColumns, type NamedColumn } from './name-columns.ts';
import type { SheetLine } from './sheet-words.ts';
import { unitAsRead } from './units-as-read.ts';

/** What stands over the columns, the table with its header as first row, and whether no row fits in between. */
export type Header = {
  readonly table: TableSurface;
  readonly columns: readonly NamedColumn[];
  /** lines of text over each column, from the top down */
  readonly headings: readonly (readonly string[])[];
  readonly isFirstSure: boolean;
  readonly grid: WrittenGrid;
};

/** A header has up to so many rows of words, and reaches so far up, row heights. */
const MOST_ROWS = 3;
const HIGHEST = 4;
/** A further row must name the columns better by this on average: it may be what stands over the table. */
const FURTHER = 0.03;

/** Rows of one header follow each other closer than this, row heights: what stands over it with more room is something else. */
const CLOSE = 1.25;
/** Further below the header than this, row heights, the first row may be the second: a fold may have hidden the first. */
const ROOM = 1.6;

/** A number with its unit over the readings is a value of the sheet's head, and so are two numbers: headings have none. */
const hasNumbers = ({ words }: { readonly words: readonly ReadWord[] }): boolean => {
  const isNumber = words.map(({ text }) => /^\d{2,}([.,]\d+)?$/.test(text));
  const hasUnit = isNumber.some((is, i) => is && unitAsRead(words[i + 1]?.text ?? '') !== null);
  return hasUnit || isNumber.filter(Boolean).length >= 2;
};

/** Words over each other, read from one place as two lines, told apart: no two of a layer overlap by more than this share. */
const OVERLAP = 0.4;

/** A row of words as layers in which none overlap, the words of one line together. */
function layersOf(words: readonly ReadWord[]): ReadWord[][] {
  const layers: ReadWord[][] = [];
  const meets = (a: ReadWord, b: ReadWord) =>
    Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0) > OVERLAP * Math.min(a.x1 - a.x0, b.x1 - b.x0);
  for (const word of words) {
    const free = layers.filter((layer) => !layer.some((other) => meets(word, other)));
    const own = free.find((layer) => layer.some((other) => other.line === word.line)) ?? free[0];
    if (own) own.push(word);
    else layers.push([word]);
  }
  return layers;
}

/** The lowest row and those over it that follow closely. */
function together<Row extends { readonly y: number }>(rows: readonly Row[], pitch: number): readonly Row[] {
  const apart = rows.findLastIndex(({ y }, i) => i + 1 < rows.length && rows[i + 1]!.y - y > CLOSE * pitch);
  return rows.slice(apart + 1);
}

/** How well columns are named on average, 0..1. */
export const surenessOf = (columns: readonly NamedColumn[]): number =>
  columns.reduce((s, c) => s + c.sureness, 0) / Math.max(1, columns.length);

/** The header is the row of words over the readings, or the two or three that name the columns best together. */
export function headerOf(table: TableSurface, found: WrittenGrid, lines: readonly SheetLine[]): Header {
  const { grid, isTold } = withFirstRow(withoutHeader(found, lines), lines);
  const top = grid.ys[0]!;
  const over = together(
    rowsOver(lines, top).filter(({ y }) => top - y < HIGHEST * grid.pitch),
    grid.pitch,
  );
  const rows = over.slice(over.findLastIndex(hasNumbers) + 1);
  const sides = { xs: grid.xs, drawn: table.drawn.xs };
  let best: (Pick<Header, 'columns' | 'headings'> & { from: number; worth: number }) | null = null;
  for (let count = 1; count <= Math.min(MOST_ROWS, rows.length); count++) {
    const some = rows.slice(-count);
    const cells = some.flatMap(({ words }) => layersOf(words)).map((words) => headCells(words, sides));
    const headings = grid.xs.slice(1).map((_, c) => cells.map((row) => row[c]!).filter(Boolean));
    const columns = nameColumns(headings);
    const worth = surenessOf(columns) - FURTHER * count;
    if (best && worth <= best.worth) continue;
    best = {
      columns,
      headings,
      from: Math.min(...some[0]!.words.map(({ y0, capitalHeight }) => y0 - 0.3 * capitalHeight)),
      worth,
    };
  }
  const below = rows.at(-1);
  return {
    grid,
    isFirstSure: isTold && below !== undefined && top + grid.pitch / 2 - below.y < ROOM * grid.pitch,
    table: {
      ...table,
      xs: grid.xs,
      ys: [Math.max(0, best?.from ?? top - grid.pitch), ...grid.ys],
      rowHeight: grid.pitch,
    },
    headings: best?.headings ?? grid.xs.slice(1).map(() => []),
    columns: best?.columns ?? nameColumns(grid.xs.slice(1).map(() => [])),
  };
}

/**
 * A header may have been taken for so many rows of readings. Such a row reads as letters by more than this share, and one
 * below it by less than that: figures in dots are read as letters everywhere.
 */
const TAKEN = 2;
const LETTERED = 0.5;
const FIGURED = 0.25;

/** The readings without the rows at their top that read as words. */
function withoutHeader(grid: WrittenGrid, lines: readonly SheetLine[]): WrittenGrid {
  const words = lines.flatMap((line) => line.words);
  const shares = Array.from({ length: TAKEN + 1 }, (_, row) => {
    const own = words.filter(({ y0, y1 }) => (y0 + y1) / 2 > grid.ys[row]! && (y0 + y1) / 2 < grid.ys[row + 1]!);
    const text = own.map((word) => word.text).join('');
    const [letters, figures] = [lettersIn(text), figuresIn(text)];
    return own.length > 1 ? letters / Math.max(1, letters + figures) : null;
  });
  const last = shares.findLastIndex(
    (share, row) => share !== null && share > LETTERED && shares.slice(row + 1).some((s) => s !== null && s < FIGURED),
  );
  return { ...grid, ys: grid.ys.slice(last + 1), isDoubtful: grid.isDoubtful.slice(last + 1) };
}

/** A row over the readings stands in step with them when the step is off by no more than this share. */
const IN_STEP = 0.2;

/**
 * The readings with the row above them that stands in step with them and reads as numbers rather than letters: a fold may
 * have hidden its figures. Where hardly any of it reads at all nobody knows which row is the first.
 */
function withFirstRow(grid: WrittenGrid, lines: readonly SheetLine[]): { grid: WrittenGrid; isTold: boolean } {
  const { pitch } = grid;
  const top = grid.ys[0]!;
  const first = (top + grid.ys[1]!) / 2;
  const ink = grid.above.findLast(({ y }) => Math.abs((first - y) / pitch - 1) < IN_STEP);
  const columns = grid.xs.length - 1;
  if (!ink || ink.words.length < columns / 2) return { grid, isTold: true };
  const reach = pitch / 2;
  const words = lines.flatMap((line) => line.words).filter((w) => Math.abs((w.y0 + w.y1) / 2 - ink.y) < reach);
  const text = words.map((word) => word.text).join('');
  const [letters, figures] = [lettersIn(text), figuresIn(text)];
  if (letters > figures) return { grid, isTold: true };
  const isTold = words.length >= columns / 2;
  return { grid: { ...grid, ys: [top - pitch, ...grid.ys], isDoubtful: [!isTold, ...grid.isDoubtful] }, isTold };
}

const lettersIn = (text: string): number => text.match(/\p{L}/gu)?.length ?? 0;
const figuresIn = (text: string): number => text.match(/\d/g)?.length ?? 0;

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
