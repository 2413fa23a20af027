import type { DigitReader } from '../digits/digit-network.ts';
import type { SheetInk } from '../ink/sheet-ink.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { bodyRows, pitchOf } from './body-rows.ts';
import { columnSides } from './column-sides.ts';
import { inStep } from './in-step.ts';
import { rowSides } from './row-sides.ts';
import { leanOfRows, textRows, type TextRow } from './text-rows.ts';
import { writtenWords, type Written } from './written-words.ts';

/** Rows and columns of the readings on a sheet laid flat, flat pixels. */
export type WrittenGrid = {
  /** sides of the columns, and of the rows of readings */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly isDoubtful: readonly boolean[];
  /** usual step from row to row, and height of a figure */
  readonly pitch: number;
  readonly digit: number;
  /** tangent by which the rows still fall to the right */
  readonly lean: number;
  /** rows of words over the readings, from the top down */
  readonly above: readonly TextRow[];
  /** how dark writing is at least */
  readonly faintest: number;
  /** what speaks for it: figures that stand in its cells */
  readonly worth: number;
};

/** Rows of a table go on no further than so many steps beyond its rulings: some may have been missed. */
const FAR = 4;
/** Words this near a row's height are in it, figure heights: hands waver. */
const NEAR = 0.62;
/** Fewer rows or columns are no table of readings. */
const FEWEST_ROWS = 3;
const FEWEST_COLUMNS = 2;

/**
 * Finds where readings stand by the writing itself: words on one height are a row, blanks between them part columns; rulings
 * that nothing is written across say where exactly. Null where no readings are seen.
 */
export function writtenGrid(table: TableSurface, { field, blots }: SheetInk, read: DigitReader): WrittenGrid | null {
  const written = writtenWords(blots, field, read);
  if (!written) return null;
  return gridOf(table, written);
}

function gridOf(table: TableSurface, { words, digit, faintest }: Written): WrittenGrid | null {
  const { xs, drawn } = table;
  const lean = leanOfRows(words, digit);
  const middle = (xs[0]! + xs.at(-1)!) / 2;
  const outer = [xs[0]!, xs.at(-1)!] as const;
  const level = words.map((w) => ({ ...w, cy: w.cy - lean * ((w.x0 + w.x1) / 2 - middle) }));
  const ruled = level.filter(
    ({ x0, x1, cy }) => isIn((x0 + x1) / 2, outer) && isIn(cy, [table.ys[0]!, table.ys.at(-1)!]),
  );
  const inside = bodyRows(textRows(ruled, digit), drawn.ys);
  const first = inside.length < FEWEST_ROWS ? bodyRows(textRows(level, digit), drawn.ys) : inside;
  if (first.length < FEWEST_ROWS) return null;
  // a column may lie beside the rulings that were found
  const wide = first.map(({ y }) => ({ y, words: level.filter(({ cy }) => Math.abs(cy - y) < NEAR * digit) }));
  const sides = columnSides(wide, drawn.xs, outer, digit);
  if (sides.length <= FEWEST_COLUMNS) return null;
  // what lies beside the table, or far above and below, tells nothing of its rows
  const far = FAR * pitchOf(first);
  const reach = [first[0]!.y - far, first.at(-1)!.y + far] as const;
  const within = level.filter(({ x0, x1, cy }) => isIn((x0 + x1) / 2, [sides[0]!, sides.at(-1)!]) && isIn(cy, reach));
  const rows = textRows(within, digit);
  const body = inStep(bodyRows(rows, drawn.ys));
  if (body.length < FEWEST_ROWS) return null;
  const { ys, isDoubtful } = rowSides(body, drawn.ys);
  return {
    xs: sides,
    ys,
    isDoubtful,
    pitch: pitchOf(body),
    digit,
    faintest,
    lean,
    above: rows.filter(({ y }) => y < ys[0]!),
    worth: body.reduce((sum, row) => sum + row.words.reduce((s, w) => s + w.letters * w.figures, 0), 0),
  };
}

const isIn = (v: number, [from, to]: readonly [number, number]): boolean => v > from && v < to;
