import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { upSides } from './cells/up-side.ts';
import type { DigitReader } from './digits/digit-network.ts';
import type { WrittenGrid } from './grid/written-grid.ts';
import { headerOf, surenessOf, type Header } from './heads/header.ts';
import { sheetWords, type SheetLine } from './heads/sheet-words.ts';
import type { SheetInk } from './ink/sheet-ink.ts';
import { findLattice } from './table/find-lattice.ts';
import { layTable, lookAt } from './table/lay-table.ts';
import { findPage, pageLattice, photoAsPage, ruledOnPage } from './table/page-lattice.ts';
import { turnedBy, type SheetLies } from './table/sheet-lies.ts';
import { AROUND_TABLE, NOTHING_AROUND } from './table/table-surface.ts';

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
 * Finds the table of readings and which of its sides is up; null where the photo shows none. Rulings on the paper say how
 * the sheet lies, or its own sides; where those hold no readings, rulings anywhere on the photo do.
 */
export async function findTable(photo: Photo, digits: DigitReader, words: WordReader): Promise<FoundTable | null> {
  let best: FoundTable | null = null;
  for (const lies of waysToLie(photo)) {
    const found = await tableIn(photo, lies, digits, words);
    if (found && (!best || worthOf(found) > worthOf(best))) best = found;
    if (best && surenessOf(best.columns) > DOUBTFUL) break;
  }
  return best && surenessOf(best.columns) > 0 ? best : null;
}

/** How the sheet may lie, the likeliest first; each is worked out when the one before was not it. */
function* waysToLie(photo: Photo): Generator<SheetLies> {
  const sheet = findPage(photo);
  // sides that are the photo's own say nothing of how a sheet lies
  if (sheet?.isPart) yield* byRulings(photo);
  const ruled = sheet && ruledOnPage(sheet.page);
  if (ruled) yield { lattice: ruled, margins: NOTHING_AROUND };
  if (sheet) yield { lattice: pageLattice(sheet.page), margins: NOTHING_AROUND };
  if (!sheet?.isPart) yield* byRulings(photo);
  const whole = sheet ? null : photoAsPage(photo);
  if (whole) yield { lattice: pageLattice(whole), margins: NOTHING_AROUND };
}

function* byRulings(photo: Photo): Generator<SheetLies> {
  const lattice = findLattice(photo);
  if (lattice) yield { lattice, margins: AROUND_TABLE };
}

/** How surely columns are named, and how many figures stand in them. */
const worthOf = ({ columns, grid }: FoundTable): number => (0.05 + surenessOf(columns)) * Math.sqrt(grid.worth);

/** The table on a lattice, from the side its digits say is up; from another where no columns are named there. */
async function tableIn(
  photo: Photo,
  lies: SheetLies,
  digits: DigitReader,
  words: WordReader,
): Promise<FoundTable | null> {
  const lying = lookAt(photo, lies);
  if (!lying) return null;
  let best: FoundTable | null = null;
  for (const quarters of upSides(lying.table, lying.ink, digits).slice(0, MOST_SIDES)) {
    const turned = turnedBy(lies, quarters);
    const look = quarters === 0 ? lying : lookAt(photo, turned);
    const laid = look && layTable(look, turned, digits);
    if (!laid) continue;
    const { table, grid, ink } = laid;
    const lines = await sheetWords(table, grid, words);
    const found = { ...headerOf(table, grid, lines), lines, ink };
    if (!best || worthOf(found) > worthOf(best)) best = found;
    if (surenessOf(best.columns) > SURE || best.columns.filter((c) => c.sureness > SURE_NAME).length >= 2) break;
  }
  return best;
}
