import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { upSides } from './cells/up-side.ts';
import type { DigitReader } from './digits/digit-network.ts';
import type { WrittenGrid } from './grid/written-grid.ts';
import { headerOf, surenessOf, type Header } from './heads/header.ts';
import { sheetWords, type SheetLine } from './heads/sheet-words.ts';
import type { SheetInk } from './ink/sheet-ink.ts';
import { findLattice, type Lattice } from './table/find-lattice.ts';
import { layTable, lookAt } from './table/lay-table.ts';
import { pageLattice } from './table/page-lattice.ts';
import { AROUND_TABLE, NOTHING_AROUND, turnedQuarter, type Margins } from './table/table-surface.ts';

/** A table the right way up, what stands over its columns, its rows, and the print above it. */
export type FoundTable = Header & {
  readonly grid: WrittenGrid;
  readonly lines: readonly SheetLine[];
  readonly ink: SheetInk;
};

/** A side whose columns are named this well on average, or two of them so well, is up. */
const SURE = 0.5;
const SURE_NAME = 0.7;
/** Under this the rulings may be those of something else. */
const DOUBTFUL = 0.2;
/** Further sides would cost more time than they are likely to bring. */
const MOST_SIDES = 2;

/**
 * Finds the table of readings and which of its sides is up; null where the photo shows none. Rulings say how the sheet
 * lies; without any, or where those found hold no readings, the paper's own sides do.
 */
export async function findTable(photo: Photo, digits: DigitReader, words: WordReader): Promise<FoundTable | null> {
  let best: FoundTable | null = null;
  for (const { find, margins } of SOURCES) {
    const lattice = find(photo);
    const found = lattice && (await tableIn(photo, lattice, margins, digits, words));
    if (found && (!best || worthOf(found) > worthOf(best))) best = found;
    if (best && surenessOf(best.columns) > DOUBTFUL) break;
  }
  return best && surenessOf(best.columns) > 0 ? best : null;
}

const SOURCES: readonly { find: (photo: Photo) => Lattice | null; margins: Margins }[] = [
  { find: findLattice, margins: AROUND_TABLE },
  { find: pageLattice, margins: NOTHING_AROUND },
];

/** How surely columns are named, and how many figures stand in them. */
const worthOf = ({ columns, grid }: FoundTable): number => (0.05 + surenessOf(columns)) * Math.sqrt(grid.worth);

/** The table on a lattice, from the side its digits say is up; from another where no columns are named there. */
async function tableIn(
  photo: Photo,
  lattice: Lattice,
  margins: Margins,
  digits: DigitReader,
  words: WordReader,
): Promise<FoundTable | null> {
  const lying = lookAt(photo, lattice, margins);
  if (!lying) return null;
  let best: FoundTable | null = null;
  for (const quarters of upSides(lying.table, lying.ink, digits).slice(0, MOST_SIDES)) {
    const turned = turnedBy(lattice, quarters);
    const look = quarters === 0 ? lying : lookAt(photo, turned, margins);
    const laid = look && layTable(look, turned, margins, digits);
    if (!laid) continue;
    const { table, grid, ink } = laid;
    const lines = await sheetWords(table, grid, words);
    const found = { ...headerOf(table, grid, lines), lines, ink };
    if (!best || worthOf(found) > worthOf(best)) best = found;
    if (surenessOf(best.columns) > SURE || best.columns.filter((c) => c.sureness > SURE_NAME).length >= 2) break;
  }
  return best;
}

const turnedBy = (lattice: Lattice, quarters: number): Lattice =>
  quarters === 0 ? lattice : turnedBy(turnedQuarter(lattice), quarters - 1);
