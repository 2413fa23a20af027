import type { Blot } from '../ink/blots.ts';
import { stepAt, type TableSurface } from './table-surface.ts';

/**
 * Rows and columns no ruling tells apart, told apart by what is written: numbers of one row stand on one height, and
 * between two columns nothing stands.
 */
export function splitByInk(table: TableSurface, blots: readonly Blot[]): TableSurface {
  const written = blotsWithin(table, blots);
  const digit = usualHeight(written);
  if (!digit) return table;
  const digits = written.filter(({ y0, y1 }) => y1 - y0 > 0.45 * digit && y1 - y0 < 1.7 * digit);
  const withColumns = { ...table, xs: splitColumns(table, digits, digit) };
  const ys = splitRows(withColumns, digits, digit);
  const heights = ys.slice(1).map((y, r) => y - ys[r]!);
  return { ...withColumns, ys, rowHeight: middleOf(heights) };
}

function blotsWithin({ xs, ys }: TableSurface, blots: readonly Blot[]): Blot[] {
  const [left, right, top, bottom] = [xs[0]!, xs[xs.length - 1]!, ys[0]!, ys[ys.length - 1]!];
  return blots.filter(({ cx, cy }) => cx > left && cx < right && cy > top && cy < bottom);
}

/** Height of a usual digit, without asking for rows: the middle of all that is neither speck nor line. */
function usualHeight(blots: readonly Blot[]): number | null {
  const heights = blots
    .filter(({ x0, x1, y0, y1 }) => y1 - y0 >= 7 && y1 - y0 < 120 && x1 - x0 < 3 * (y1 - y0))
    .map(({ y0, y1 }) => y1 - y0)
    .sort((a, b) => a - b);
  return heights.length >= 6 ? heights[Math.floor(0.6 * heights.length)]! : null;
}

/** A gap between columns is this wide at least, digit heights, and crossed by no more than this share of the rows. */
const LEAST_GAP = 0.7;
const CROSSED = 0.08;
/** In a ruled column a gap parts two only where so many rows have something on both sides of it. */
const BOTH_SIDES = 0.6;

/** Every column cut at its gaps; those between rulings only where a ruling was missed. */
function splitColumns({ xs, ys }: TableSurface, digits: readonly Blot[], digit: number): number[] {
  // the header is wider than the numbers under it
  const header = ys.length > 2 ? ys[1]! : -Infinity;
  const body = digits.filter(({ cy }) => cy >= header);
  const isRuled = xs.length > 2;
  return xs.flatMap((left, c) => {
    const right = xs[c + 1];
    if (right === undefined) return [left];
    const own = body.filter(({ cx }) => cx >= left && cx < right);
    const gaps = gapsIn(own, left, right, digit);
    return [left, ...(isRuled ? gaps.filter((x) => isBetween(x, own, digit)) : gaps)];
  });
}

const rowOf = ({ cy }: Blot, digit: number): number => Math.round(cy / (1.2 * digit));

/** Middles of the upright gaps in some ink, those at its sides left out. */
function gapsIn(blots: readonly Blot[], left: number, right: number, digit: number): number[] {
  const first = Math.floor(left);
  const crossed = Array.from({ length: Math.ceil(right) - first }, () => new Set<number>());
  for (const blot of blots)
    for (let x = Math.max(first, blot.x0); x < Math.min(right, blot.x1); x++)
      crossed[x - first]!.add(rowOf(blot, digit));
  const rows = new Set(blots.map((blot) => rowOf(blot, digit))).size;
  const middles: number[] = [];
  let from = 0;
  crossed.forEach((set, i) => {
    if (set.size <= CROSSED * rows) return;
    if (from > 0 && i - from > LEAST_GAP * digit) middles.push(first + (from + i) / 2);
    from = i + 1;
  });
  return middles;
}

function isBetween(x: number, blots: readonly Blot[], digit: number): boolean {
  const rows = (some: readonly Blot[]) => new Set(some.map((blot) => rowOf(blot, digit)));
  const [before, behind] = [rows(blots.filter(({ cx }) => cx < x)), rows(blots.filter(({ cx }) => cx >= x))];
  const both = [...before].filter((row) => behind.has(row)).length;
  return both >= 3 && both >= BOTH_SIDES * new Set([...before, ...behind]).size;
}

/** Rows stand this much apart at least, digit heights. */
const LEAST_PITCH = 1.1;

function splitRows({ xs, ys }: TableSurface, digits: readonly Blot[], digit: number): number[] {
  const columns = xs.slice(1).map((_, c) => digits.filter(({ cx }) => stepAt(xs, cx) === c));
  const isHeaderRuled = ys.length > 2;
  return ys.flatMap((top, r) => {
    const bottom = ys[r + 1];
    if (bottom === undefined || (r === 0 && isHeaderRuled)) return [top];
    const heights = columns.map((column) =>
      levelsOf(
        column.filter(({ cy }) => cy >= top && cy < bottom),
        digit,
      ),
    );
    const steps = heights.flatMap((list) => list.slice(1).map((y, i) => y - list[i]!));
    const many = heights.filter((list) => list.length > 1).length;
    if (many < 2 || many < 0.4 * heights.filter((list) => list.length > 0).length) return [top];
    const pitch = Math.max(LEAST_PITCH * digit, middleOf(steps));
    const rows = clustersOf(heights.flat(), 0.5 * pitch);
    return [top, ...rows.slice(1).map((y, i) => (y + rows[i]!) / 2)];
  });
}

/** Heights on which the numbers of one column stand, from the top. */
const levelsOf = (blots: readonly Blot[], digit: number): number[] =>
  clustersOf(
    blots.map(({ cy }) => cy),
    0.55 * digit,
  );

/** Means of the groups numbers fall into when a group reaches no further than `reach` from its mean. */
function clustersOf(numbers: readonly number[], reach: number): number[] {
  const groups: { sum: number; count: number }[] = [];
  for (const v of numbers.toSorted((a, b) => a - b)) {
    const last = groups[groups.length - 1];
    if (last && v - last.sum / last.count < reach) {
      last.sum += v;
      last.count++;
    } else groups.push({ sum: v, count: 1 });
  }
  return groups.map(({ sum, count }) => sum / count);
}

const middleOf = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[list.length >> 1] ?? 0;
