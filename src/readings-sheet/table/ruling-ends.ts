import { crossing } from '../../picture/lines/line-webs.ts';
import { acrossAt, type PageLine } from '../../picture/lines/page-lines.ts';
import type { Rulings } from './choose-rulings.ts';
import { ladderNodes } from './ladder.ts';
import { transposed, type Lattice, type Xy } from './lattice.ts';

/** Rulings that run on for this share of a usual column (or row) bound one more. */
const ONE_MORE = 0.45;

/** Crossings of a table's rulings, and their ends where those bound a column or a row that has no ruling of its own. */
export function withEnds({ level, upright }: Rulings): Lattice {
  if (!upright.length) {
    const nodes = ladderNodes(level);
    return { nodes, isDrawn: { level: nodes.map(() => true), upright: [false, false] } };
  }
  if (!level.length) {
    const nodes = ladderNodes(upright);
    return { nodes: transposed(nodes), isDrawn: { level: [false, false], upright: nodes.map(() => true) } };
  }
  const crossings = level.map((l) => upright.map((u): Xy => crossing(u, l) ?? [acrossAt(u, l.c[0]), l.c[0]]));
  const columns = withOuter(crossings, level, 0);
  const rows = withOuter(transposed(columns.nodes), upright, 1, columns.before);
  const drawn = (count: number, { before, behind }: { before: boolean; behind: boolean }) => [
    ...(before ? [false] : []),
    ...Array.from({ length: count }, () => true),
    ...(behind ? [false] : []),
  ];
  return {
    nodes: transposed(rows.nodes),
    isDrawn: { level: drawn(level.length, rows), upright: drawn(upright.length, columns) },
  };
}

/**
 * Adds a node before the first and behind the last of every row where the lines through the rows run on that far.
 * @param k the coordinate along these lines @param skip whether the first row's nodes have no line of their own
 */
function withOuter(rows: readonly (readonly Xy[])[], lines: readonly PageLine[], k: 0 | 1, skip = false) {
  const own = lines.map((line, i) => ({ line, row: rows[skip ? i + 1 : i]! }));
  const gaps = own.flatMap(({ row }) => row.slice(1).map((at, c) => at[k] - row[c]![k]));
  const usual = middleOf(gaps);
  /** how far the lines run on, shares of the gap beside */
  const before = middleOf(own.map(({ line, row }) => (row[0]![k] - line.from) / (row[1]![k] - row[0]![k])));
  const behind = middleOf(own.map(({ line, row }) => (line.to - row.at(-1)![k]) / (row.at(-1)![k] - row.at(-2)![k])));
  const first = middleOf(own.map(({ row }) => row[1]![k] - row[0]![k]));
  const last = middleOf(own.map(({ row }) => row.at(-1)![k] - row.at(-2)![k]));
  const has = { before: before * first > ONE_MORE * usual, behind: behind * last > ONE_MORE * usual };
  const beyond = (a: Xy, b: Xy, share: number): Xy => [a[0] + (a[0] - b[0]) * share, a[1] + (a[1] - b[1]) * share];
  return {
    ...has,
    nodes: rows.map((row) => [
      ...(has.before ? [beyond(row[0]!, row[1]!, before)] : []),
      ...row,
      ...(has.behind ? [beyond(row.at(-1)!, row.at(-2)!, behind)] : []),
    ]),
  };
}

const middleOf = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[list.length >> 1]!;
