import type { Blot } from '../ink/blots.ts';
import { stepAt, type TableSurface } from '../table/table-surface.ts';

/**
 * What lies in one cell: its blots from left to right; and whether something larger lies there too, a ring, a fold, a
 * crossing-out over several cells, which may have swallowed digits.
 */
export type CellBlots = {
  readonly row: number;
  readonly column: number;
  readonly blots: readonly Blot[];
  readonly isStained: boolean;
};

/** Larger than this, row heights, is no digit but a ring, a shadow, a drawn line. */
const LARGEST = 1.7;
/** Writing may lie on the ruling: this far outside the table still belongs to its outer cells, row heights. */
const SPILL = 0.35;

/** This many pixels of something large within a cell, its edges left out, stain it: share of a row's height squared. */
const STAIN = 0.012;
const EDGE = 0.16;

/** Gives every blot to the cell its middle lies in. @param width of the field the blots are of @returns cells[row][column] */
export function blotsByCell(blots: readonly Blot[], { xs, ys, rowHeight }: TableSurface, width: number): CellBlots[][] {
  const cells = ys
    .slice(1)
    .map((_, row) => xs.slice(1).map((_, column) => ({ row, column, blots: [] as Blot[], stain: 0 })));
  const columns = xs.slice(1).map(() => [] as Blot[]);
  const spill = SPILL * rowHeight;
  for (const blot of blots) {
    const [wide, high] = [blot.x1 - blot.x0, blot.y1 - blot.y0];
    const isNear = (v: number, list: readonly number[]) => v > list[0]! - spill && v < list[list.length - 1]! + spill;
    if (high > LARGEST * rowHeight || wide > 6 * rowHeight) {
      for (const at of blot.pixels) {
        const [x, y] = [at % width, Math.floor(at / width)];
        const [r, c] = [stepAt(ys, y), stepAt(xs, x)];
        if (isInner(x, xs[c]!, xs[c + 1]!) && isInner(y, ys[r]!, ys[r + 1]!)) cells[r]![c]!.stain++;
      }
    } else if (isNear(blot.cx, xs) && isNear(blot.cy, ys)) columns[stepAt(xs, blot.cx)]!.push(blot);
  }
  // a number lies in one row as a whole, however it slants
  columns.forEach((column, c) => {
    for (const number of numbersIn(column, BESIDE * rowHeight)) {
      const tall = Math.max(...number.map(({ y0, y1 }) => y1 - y0));
      const digits = number.filter(({ y0, y1 }) => y1 - y0 > 0.5 * tall);
      const cy = digits.reduce((sum, b) => sum + b.cy, 0) / digits.length;
      cells[stepAt(ys, cy)]![c]!.blots.push(...number);
    }
  });
  return cells.map((row) =>
    row.map(({ stain, ...cell }) => ({
      ...cell,
      blots: cell.blots.sort((a, b) => a.x0 + a.x1 - b.x0 - b.x1),
      isStained: stain > STAIN * rowHeight ** 2,
    })),
  );
}

/** Digits of one number stand this near, row heights, and share so much of the lower one's height. */
const BESIDE = 0.35;
const SHARED = 0.4;

/** Blots beside each other that make one number. */
function numbersIn(column: readonly Blot[], reach: number): Blot[][] {
  const numbers: Blot[][] = [];
  for (const blot of column.toSorted((a, b) => a.x0 - b.x0)) {
    const own = numbers.find((number) =>
      number.some((b) => {
        const shared = Math.min(b.y1, blot.y1) - Math.max(b.y0, blot.y0);
        return blot.x0 - b.x1 < reach && shared > SHARED * Math.min(b.y1 - b.y0, blot.y1 - blot.y0);
      }),
    );
    if (own) own.push(blot);
    else numbers.push([blot]);
  }
  return numbers;
}

const isInner = (v: number, from: number, to: number): boolean =>
  v > from + EDGE * (to - from) && v < to - EDGE * (to - from);

/** Height of a usual digit: the middle of the taller blots' heights. Flat pixels. */
export function digitHeight(cells: readonly CellBlots[], rowHeight: number): number {
  const heights = cells
    .flatMap(({ blots }) => blots.map(({ y0, y1 }) => y1 - y0))
    .filter((h) => h > 0.2 * rowHeight && h < 1.1 * rowHeight)
    .sort((a, b) => a - b);
  return heights[Math.floor(0.6 * heights.length)] ?? 0.5 * rowHeight;
}
