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
  { sheet, grid }: TracingTable,
  islands: readonly InkIsland[],
  words: readonly SheetBox[],
  lines: readonly TracedCurve[],
  ink: number,
): { x: number; y: number }[] {
  const stray = islands
    .filter((i) => i.area >= SMALLEST_STRAY_PX && mean(i.pixels.map((p) => sheet.darkness[p]!)) > ink)
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

const grown = (b: SheetBox): SheetBox => ({
  left: b.left - BY_WORD_PX,
  top: b.top - BY_WORD_PX,
  right: b.right + BY_WORD_PX,
  bottom: b.bottom + BY_WORD_PX,
});

const mean = (values: readonly number[]) => values.reduce((s, v) => s + v, 0) / values.length;
