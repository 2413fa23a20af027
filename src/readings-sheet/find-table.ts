import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { upSides } from './cells/up-side.ts';
import type { DigitReader } from './digits/digit-network.ts';
import { headerOf, surenessOf, type Header } from './heads/header.ts';
import { sheetWords, type SheetLine } from './heads/sheet-words.ts';
import { sheetInk, type SheetInk } from './ink/sheet-ink.ts';
import { findLattice, type Lattice } from './table/find-lattice.ts';
import { pageTable, type PageTable } from './table/page-table.ts';
import { splitByInk } from './table/split-by-ink.ts';
import { tableSurface, turnedQuarter } from './table/table-surface.ts';

/** A table the right way up, what stands over its columns, and the print above and in its first rows. */
export type FoundTable = Header & { readonly lines: readonly SheetLine[]; readonly ink: SheetInk };

/** A side whose columns are named this well on average, or two of them so well, is up. */
const SURE = 0.5;
const SURE_NAME = 0.7;
/** Under this the rulings may be those of something else. */
const DOUBTFUL = 0.3;
/** Further sides would cost more time than they are likely to bring. */
const MOST_SIDES = 2;

/** Finds the table of readings and which of its sides is up; null where the photo shows none. */
export async function findTable(photo: Photo, digits: DigitReader, words: WordReader): Promise<FoundTable | null> {
  const ruled = await ruledTable(photo, digits, words);
  if (ruled && surenessOf(ruled.columns) > DOUBTFUL) return ruled;
  const page = await pageTable(photo, words);
  const written = page && withoutRuled(page);
  const best = [ruled, written].reduce(
    (a, b) => (b && (!a || surenessOf(b.columns) > surenessOf(a.columns)) ? b : a),
    null,
  );
  return best && surenessOf(best.columns) > 0 ? best : null;
}

/** The table by its rulings, from the side its digits say is up; from the others where no columns are named there. */
async function ruledTable(photo: Photo, digits: DigitReader, words: WordReader): Promise<FoundTable | null> {
  const lattice = findLattice(photo);
  const lying = lattice && tableSurface(photo, lattice);
  if (!lying) return null;
  const first = sheetInk(lying);
  let best: FoundTable | null = null;
  for (const quarters of upSides(lying, first, digits).slice(0, MOST_SIDES)) {
    const table = quarters === 0 ? lying : tableSurface(photo, turnedBy(lattice, quarters));
    if (!table) continue;
    const ink = quarters === 0 ? first : sheetInk(table);
    const split = splitByInk(table, ink.blots);
    const lines = await sheetWords(split, words);
    const found = { ...headerOf(split, lines), lines, ink };
    if (!best || surenessOf(found.columns) > surenessOf(best.columns)) best = found;
    if (surenessOf(best.columns) > SURE || best.columns.filter((c) => c.sureness > SURE_NAME).length >= 2) break;
  }
  return best;
}

const turnedBy = (lattice: Lattice, quarters: number): Lattice =>
  quarters === 0 ? lattice : turnedBy(turnedQuarter(lattice), quarters - 1);

function withoutRuled({ table, lines }: PageTable): FoundTable {
  const ink = sheetInk(table);
  return { ...headerOf(splitByInk(table, ink.blots), lines), lines, ink };
}
