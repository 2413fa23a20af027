import type { Photo } from '../../picture/raster.ts';
import type { DigitReader } from '../digits/digit-network.ts';
import { writtenGrid, type WrittenGrid } from '../grid/written-grid.ts';
import { sheetInk, type SheetInk } from '../ink/sheet-ink.ts';
import type { SheetLies } from './sheet-lies.ts';
import { tableSurface, type Fit, type TableSurface } from './table-surface.ts';

/** A sheet laid flat, its ink, and the rows and columns of readings on it. */
export type LaidTable = Look & { readonly grid: WrittenGrid };

/** The digit reader was taught on figures about so high, flat pixels; so much lower or higher is as good. */
const FIGURE_PX = 31;
const AS_GOOD = { lower: 1.15, higher: 1.3 };
/** A lean that shifts the end of a row by this much is taken out, figure heights. */
const SHIFT = 0.25;

/** A table laid flat, and its ink. */
export type Look = { readonly table: TableSurface; readonly ink: SheetInk };

/** Lays a table flat as it lies in the photo. */
export function lookAt(photo: Photo, { lattice, margins }: SheetLies, fit?: Fit): Look | null {
  const table = tableSurface(photo, lattice, margins, fit);
  if (!table) return null;
  const ink = sheetInk(table);
  return { table: { ...table, drawn: ink.drawn }, ink };
}

/**
 * Lays a table flat so that its figures have the usual size and its rows are level; null where no readings are seen.
 */
export function layTable({ table, ink }: Look, lies: SheetLies, read: DigitReader): LaidTable | null {
  const first = withGrid({ table, ink }, read);
  if (!first) return null;
  const { grid } = first;
  const off = FIGURE_PX / grid.digit;
  const shift = (Math.abs(grid.lean) * (grid.xs.at(-1)! - grid.xs[0]!)) / 2 / grid.digit;
  if (off < AS_GOOD.lower && off > 1 / AS_GOOD.higher && shift < SHIFT) return first;
  const fit = { zoom: off / table.surface.photoPixels, lean: grid.lean };
  const again = lookAt(table.surface.photo, lies, fit);
  return (again && withGrid(again, read)) ?? first;
}

function withGrid({ table, ink }: Look, read: DigitReader): LaidTable | null {
  const grid = writtenGrid(table, ink, read);
  if (!grid) return null;
  const blots = ink.blots.filter(({ level }) => level >= grid.faintest);
  return { table: { ...table, rowHeight: grid.pitch }, ink: { ...ink, blots }, grid };
}
