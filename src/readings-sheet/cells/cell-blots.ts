import type { Blot } from '../ink/blots.ts';
import { stepAt, type TableSurface } from '../table/table-surface.ts';

/**
 * What lies in one cell: its blots from left to right; whether something larger lies there too, a ring, a fold, a
 * crossing-out over several cells, which may have swallowed digits; and whether its number goes on beside the cell.
 */
export type CellBlots = {
  readonly row: number;
  readonly column: number;
  readonly blots: readonly Blot[];
  readonly isStained: boolean;
  readonly isCut: boolean;
};

/** Larger than this, row heights, is no digit but a ring, a shadow, a drawn line. */
const LARGEST = 1.7;
/** Writing may lie on the ruling: this far outside the table still belongs to its outer cells, row heights. */
const SPILL = 0.35;

/** This many pixels of something large within a cell, its edges left out, stain it: share of a row's height squared. */
const STAIN = 0.012;
const EDGE = 0.16;

/** Gives every blot to the cell its middle lies in. @param width of the field the blots are of @returns cells[row][column] */
export function blotsByCell(
  blots: readonly Blot[],
  { xs, ys, rowHeight, drawn }: TableSurface,
  width: number,
): CellBlots[][] {
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
  const found = cells.map((row) =>
    row.map(({ stain, ...cell }) => ({
      ...cell,
      blots: cell.blots.sort((a, b) => a.x0 + a.x1 - b.x0 - b.x1),
      isStained: stain > STAIN * rowHeight ** 2,
    })),
  );
  const isDrawn = (x: number) => drawn.xs.some((at) => Math.abs(at - x) < 1);
  const cut = (row: (typeof found)[number], side: number) => {
    const [left, right] = [row[side - 1], row[side]];
    return left && right ? goesOn(left.blots, right.blots, xs[side]!, isDrawn(xs[side]!), rowHeight) : false;
  };
  return found.map((row) => row.map((cell, c) => ({ ...cell, isCut: cut(row, c) || cut(row, c + 1) })));
}

/** Ink this far over a side on both its sides lies across it; pieces nearer than this belong together: row heights. */
const ACROSS = 0.1;
const CLOSE = 0.14;

/** Whether a number goes on across the side between two cells; beyond a ruling only where one piece lies across it. */
function goesOn(
  left: readonly Blot[],
  right: readonly Blot[],
  side: number,
  isDrawn: boolean,
  rowHeight: number,
): boolean {
  const across = ACROSS * rowHeight;
  const tall = (blots: readonly Blot[]) => blots.filter(({ y0, y1 }) => y1 - y0 > 0.2 * rowHeight);
  if (tall([...left, ...right]).some(({ x0, x1 }) => x0 < side - across && x1 > side + across)) return true;
  if (isDrawn) return false;
  const [last, first] = [tall(left).at(-1), tall(right)[0]];
  if (!last || !first) return false;
  const shared = Math.min(last.y1, first.y1) - Math.max(last.y0, first.y0);
  return first.x0 - last.x1 < CLOSE * rowHeight && shared > SHARED * Math.min(last.y1 - last.y0, first.y1 - first.y0);
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
