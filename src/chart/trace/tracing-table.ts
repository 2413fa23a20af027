import { frameHalfWidth } from '../frame/frame-lines.ts';
import type { GridInk } from '../grid/grid-ink.ts';
import { likenessTo, type InkColour, type Likeness } from './likeness.ts';
import type { Sheet } from '../sheet.ts';
import type { Bounds } from './ways-on.ts';

/** What all curves of one chart share while they are traced. */
export type TracingTable = {
  readonly sheet: Sheet;
  readonly grid: GridInk;
  readonly frameHalf: number;
  readonly bounds: Bounds;
  readonly likenesses: { colour: InkColour; spread: number; likeness: Likeness }[];
};

/** Makes a sheet ready for tracing. */
export function tracingTable(sheet: Sheet, grid: GridInk): TracingTable {
  const frameHalf = frameHalfWidth(sheet);
  const clear = frameHalf + 1.5;
  const bounds = {
    left: sheet.margin + clear,
    right: sheet.margin + sheet.frameWidth - clear,
    top: sheet.margin + clear,
    bottom: sheet.margin + sheet.frameHeight - clear,
  };
  return { sheet, grid, frameHalf, bounds, likenesses: [] };
}

/**
 * Curves of the same ink share one likeness picture.
 * @param spread how far ink of this curve strays in colour, see `likenessTo`
 */
export function sharedLikeness(table: TracingTable, colour: InkColour, spread: number): Likeness {
  const same = table.likenesses.find(
    (l) => distance(l.colour, colour) < 0.06 && Math.abs(l.spread - spread) < 0.3 * spread,
  );
  if (same) return same.likeness;
  const likeness = likenessTo(table.sheet, table.grid, colour, spread);
  table.likenesses.push({ colour, spread, likeness });
  return likeness;
}

const distance = (a: InkColour, b: InkColour) =>
  Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) / Math.hypot(b[0], b[1], b[2]);
