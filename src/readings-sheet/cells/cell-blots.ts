import type { Blot } from '../ink/blots.ts';
import { stepAt, type TableSurface } from '../table/table-surface.ts';

/** What lies in one cell: its blots from left to right. */
export type CellBlots = { readonly row: number; readonly column: number; readonly blots: readonly Blot[] };

/** Larger than this, row heights, is no digit but a ring, a shadow, a drawn line. */
const LARGEST = 1.7;
/** Writing may lie on the ruling: this far outside the table still belongs to its outer cells, row heights. */
const SPILL = 0.35;

/** Gives every blot to the cell its middle lies in. @returns cells[row][column] */
export function blotsByCell(blots: readonly Blot[], { xs, ys, rowHeight }: TableSurface): CellBlots[][] {
  const cells = ys.slice(1).map((_, row) => xs.slice(1).map((_, column) => ({ row, column, blots: [] as Blot[] })));
  const spill = SPILL * rowHeight;
  for (const blot of blots) {
    const [wide, high] = [blot.x1 - blot.x0, blot.y1 - blot.y0];
    if (high > LARGEST * rowHeight || wide > 6 * rowHeight) continue;
    const isNear = (v: number, list: readonly number[]) => v > list[0]! - spill && v < list[list.length - 1]! + spill;
    if (!isNear(blot.cx, xs) || !isNear(blot.cy, ys)) continue;
    cells[stepAt(ys, blot.cy)]![stepAt(xs, blot.cx)]!.blots.push(blot);
  }
  for (const row of cells) for (const cell of row) cell.blots.sort((a, b) => a.x0 + a.x1 - b.x0 - b.x1);
  return cells;
}

/** Height of a usual digit: the middle of the taller blots' heights. Flat pixels. */
export function digitHeight(cells: readonly CellBlots[], rowHeight: number): number {
  const heights = cells
    .flatMap(({ blots }) => blots.map(({ y0, y1 }) => y1 - y0))
    .filter((h) => h > 0.2 * rowHeight && h < 1.1 * rowHeight)
    .sort((a, b) => a - b);
  return heights[Math.floor(0.6 * heights.length)] ?? 0.5 * rowHeight;
}
