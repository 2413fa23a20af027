import type { Field } from '../../writing/crop/filters.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { findBlots, type Blot } from './blots.ts';
import { tableInk } from './table-ink.ts';
import { withoutRulings } from './without-rulings.ts';

/** All ink on a sheet laid flat but the table's rulings: how dark each pixel is, and the connected pieces. */
export type SheetInk = { readonly field: Field; readonly blots: readonly Blot[] };

const FEWEST_PIXELS = 6;

/** Finds what is written and printed on a sheet. */
export function sheetInk(table: TableSurface): SheetInk {
  const ink = tableInk(table);
  const field = withoutRulings(ink, table);
  return { field, blots: findBlots(field, ink.least, FEWEST_PIXELS) };
}
