import type { TableSurface } from '../table/table-surface.ts';
import { nameColumns, type NamedColumn } from './name-columns.ts';
import { linesInRow, type SheetLine } from './sheet-words.ts';

/** What stands over the columns, the first row of readings, and the table with its header as first row. */
export type Header = {
  readonly table: TableSurface;
  readonly columns: readonly NamedColumn[];
  /** from 0 at the top */
  readonly firstRow: number;
};

/** A header in two rows, or above the first ruling, must be named this much better on average than the first row alone. */
const CLEARLY = 0.12;
/** A header above the first ruling reaches so far up, row heights. */
const ABOVE = 1.9;

/** How well columns are named on average, 0..1. */
export const surenessOf = (columns: readonly NamedColumn[]): number =>
  columns.reduce((s, c) => s + c.sureness, 0) / Math.max(1, columns.length);

/** The header is the first row; or the first two where names and units have a row each; or stands over the first ruling. */
export function headerOf(table: TableSurface, lines: readonly SheetLine[]): Header {
  const first = linesInRow(lines, table, 0);
  const second = linesInRow(lines, table, 1);
  const one: Header = { table, columns: nameColumns(first), firstRow: 1 };
  const two: Header = { table, columns: nameColumns(first.map((cell, c) => [...cell, ...second[c]!])), firstRow: 2 };
  const raised = { ...table, ys: [table.ys[0]! - ABOVE * table.rowHeight, ...table.ys] };
  const over: Header = { table: raised, columns: nameColumns(linesInRow(lines, raised, 0)), firstRow: 1 };
  const others = isText(second) ? [two, over] : [over];
  return others.reduce((a, b) => (surenessOf(b.columns) > surenessOf(a.columns) + CLEARLY ? b : a), one);
}

const isText = (cells: readonly (readonly string[])[]): boolean =>
  cells.filter((cell) => /\p{L}{2}|%/u.test(cell.join(' '))).length > 0.5 * cells.length;
