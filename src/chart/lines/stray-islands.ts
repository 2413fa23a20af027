import type { Bounds } from '../trace/ways-on.ts';
import type { TracedCurve } from '../trace/trace.ts';
import type { TracingTable } from '../trace/tracing-table.ts';
import type { InkIsland } from './ink-islands.ts';
import { isIn, type SheetBox } from './line-seeds.ts';

/** Fewer dashes or dots than these make no line. */
const MOST_STRAY = 18;
/** Pieces so near a word may be its letters, so near a grid line its dashes, sheet pixels. */
const BY_WORD_PX = 14;
const BY_GRID_PX = 4;
const SMALLEST_STRAY_PX = 9;
const STRAY_PX = 9;

/** Islands of clear ink that are neither letters nor on any line: where there are many they are the dashes of a line. */
export function strayIslands(
  { sheet, grid, bounds }: TracingTable,
  islands: readonly InkIsland[],
  words: readonly SheetBox[],
  lines: readonly TracedCurve[],
  ink: number,
): { x: number; y: number }[] {
  const stray = islands
    .filter(
      (i) => i.area >= SMALLEST_STRAY_PX && !isTick(i, bounds) && mean(i.pixels.map((p) => sheet.darkness[p]!)) > ink,
    )
    .map((i) => ({ x: (i.left + i.right) / 2, y: (i.top + i.bottom) / 2 }))
    .filter(({ x, y }) => !words.some((w) => isIn(grown(w), x, y)) && !isByGrid(x, y))
    .filter(
      ({ x, y }) => !lines.some(({ trace }) => trace.x.some((v, k) => Math.hypot(v - x, trace.y[k]! - y) < STRAY_PX)),
    );
  return stray.length >= MOST_STRAY ? stray : [];

  function isByGrid(x: number, y: number): boolean {
    for (let d = -BY_GRID_PX; d <= BY_GRID_PX; d++)
      if (
        grid.data[Math.round(y + d) * grid.width + Math.round(x)]! > 0 ||
        grid.data[Math.round(y) * grid.width + Math.round(x + d)]! > 0
      )
        return true;
    return false;
  }
}

/** A tick stands on its side of the frame, and reaches no further into the plot, sheet pixels; it is no thicker than a line. */
const FROM_SIDE_PX = 7;
const LONGEST_TICK_PX = 24;
const THICKEST_TICK_PX = 6;

function isTick({ left, right, top, bottom }: InkIsland, bounds: Bounds): boolean {
  const [wide, high] = [right - left + 1, bottom - top + 1];
  const isBy = (gap: number) => gap < FROM_SIDE_PX;
  return (
    (high <= THICKEST_TICK_PX && wide < LONGEST_TICK_PX && (isBy(left - bounds.left) || isBy(bounds.right - right))) ||
    (wide <= THICKEST_TICK_PX && high < LONGEST_TICK_PX && (isBy(top - bounds.top) || isBy(bounds.bottom - bottom)))
  );
}

const grown = (b: SheetBox): SheetBox => ({
  left: b.left - BY_WORD_PX,
  top: b.top - BY_WORD_PX,
  right: b.right + BY_WORD_PX,
  bottom: b.bottom + BY_WORD_PX,
});

const mean = (values: readonly number[]) => values.reduce((s, v) => s + v, 0) / values.length;
