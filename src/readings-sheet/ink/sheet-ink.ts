import type { Field } from '../../writing/crop/filters.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { findBlots, type Blot } from './blots.ts';
import { isBroken } from './broken-ink.ts';
import { takeOutLong } from './long-strokes.ts';
import { tableInk } from './table-ink.ts';
import { withoutRulings } from './without-rulings.ts';

/**
 * All ink on a sheet laid flat but the table's rulings: how dark each pixel is, the connected pieces, and where rulings
 * were seen.
 */
export type SheetInk = {
  readonly field: Field;
  readonly blots: readonly Blot[];
  readonly drawn: TableSurface['drawn'];
};

const FEWEST_PIXELS = 6;
/** Dots so near each other are one stroke, flat pixels. */
const BRIDGED = 2;
/** What is thinner than any pen and longer than a speck is the edge of a ruling, flat pixels. */
const THIN = 2;
const LONGER = 7;

/** Finds what is written and printed on a sheet. */
export function sheetInk(table: TableSurface): SheetInk {
  const ink = tableInk(table);
  const { field, drawn } = withoutRulings(ink, table);
  const { least } = ink;
  const size = [table.xs.at(-1)! - table.xs[0]!, table.ys.at(-1)! - table.ys[0]!] as const;
  const first = findBlots(field, least, FEWEST_PIXELS);
  const blots = takeOutLong(field, first, size) ? findBlots(field, least, FEWEST_PIXELS) : first;
  const whole = isBroken(blots) ? findBlots(field, least, FEWEST_PIXELS, BRIDGED) : blots;
  return { field, drawn, blots: whole.filter((blot) => !isEdge(blot)) };
}

function isEdge({ x0, x1, y0, y1 }: Blot): boolean {
  const [wide, high] = [x1 - x0, y1 - y0];
  return Math.min(wide, high) <= THIN && Math.max(wide, high) >= LONGER;
}
