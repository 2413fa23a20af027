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
  const withColumns = table.xs.length === 2 ? { ...table, xs: splitColumns(table, digits, digit) } : table;
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

function splitColumns({ xs, ys }: TableSurface, digits: readonly Blot[], digit: number): number[] {
  const [left, right] = [Math.floor(xs[0]!), Math.ceil(xs[1]!)];
  const rows = new Set(digits.map(({ cy }) => Math.round(cy / digit)));
  const crossed = Array.from({ length: right - left }, () => new Set<number>());
  // the header is wider than the numbers under it
  const header = ys.length > 2 ? ys[1]! : -Infinity;
  for (const { x0, x1, cy } of digits) {
    if (cy < header) continue;
    for (let x = Math.max(left, x0); x < Math.min(right, x1); x++) crossed[x - left]!.add(Math.round(cy / digit));
  }
  const isFree = crossed.map((set) => set.size <= CROSSED * rows.size);
  const edges = [xs[0]!];
  let from = -1;
  isFree.forEach((free, i) => {
    if (free) {
      if (from < 0) from = i;
      return;
    }
    if (from > 0 && i - from > LEAST_GAP * digit) edges.push(left + (from + i) / 2);
    from = -1;
  });
  return [...edges, xs[1]!];
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
