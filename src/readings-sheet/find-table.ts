import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { nameColumns, type NamedColumn } from './heads/name-columns.ts';
import { linesInRow, sheetWords, type SheetLine } from './heads/sheet-words.ts';
import { sheetInk, type SheetInk } from './ink/sheet-ink.ts';
import { findLattice } from './table/find-lattice.ts';
import { splitByInk } from './table/split-by-ink.ts';
import { tableSurface, turnedQuarter, type TableSurface } from './table/table-surface.ts';

/** A table the right way up, what stands over its columns, and the print above and in its first rows. */
export type FoundTable = {
  readonly table: TableSurface;
  readonly columns: readonly NamedColumn[];
  /** the first row of readings, from 0 at the top */
  readonly firstRow: number;
  readonly lines: readonly SheetLine[];
  readonly ink: SheetInk;
};

/** A side whose columns are named this well on average is up. */
const SURE = 0.5;

/** Finds the table of readings and which of its sides is up; null where the photo shows none. */
export async function findTable(photo: Photo, words: WordReader): Promise<FoundTable | null> {
  let lattice = findLattice(photo);
  if (!lattice) return null;
  let best: FoundTable | null = null;
  for (let quarter = 0; quarter < 4; quarter++, lattice = turnedQuarter(lattice)) {
    const ruled = tableSurface(photo, lattice);
    if (!ruled) continue;
    const ink = sheetInk(ruled);
    const table = splitByInk(ruled, ink.blots);
    const lines = await sheetWords(table, words);
    const found = { table, lines, ink, ...headerOf(table, lines) };
    if (!best || sureness(found) > sureness(best)) best = found;
    if (sureness(best) > SURE) break;
  }
  return best && sureness(best) > 0 ? best : null;
}

const sureness = ({ columns }: FoundTable): number => columns.reduce((s, c) => s + c.sureness, 0) / columns.length;

/** The header is the first row, or the first two where names and units have a row each. */
function headerOf(table: TableSurface, lines: readonly SheetLine[]): Pick<FoundTable, 'columns' | 'firstRow'> {
  const first = linesInRow(lines, table, 0);
  const second = linesInRow(lines, table, 1);
  const isText = (cells: readonly (readonly string[])[]) =>
    cells.filter((cell) => /\p{L}{2}|%/u.test(cell.join(' '))).length > 0.5 * cells.length;
  const columns = nameColumns(first);
  if (!isText(second)) return { columns, firstRow: 1 };
  return { columns: nameColumns(first.map((cell, c) => [...cell, ...second[c]!])), firstRow: 2 };
}
