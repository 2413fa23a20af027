import { columnFit } from '../columns/column-fit.ts';
import type { DigitReader } from '../digits/digit-network.ts';
import type { SheetInk } from '../ink/sheet-ink.ts';
import { plainNumber } from './ask-words.ts';
import { spelt, type ReadCell } from './read-cells.ts';
import { habitsOf, UNSETTLED, type Settled } from './reading-habits.ts';

/** The reader of digits is right in most habits: the columns must go so much better with the other, and may go so much worse with it. */
const BETTER = 6;
const WORSE = 1;

/**
 * Settles the readers' habits on a sheet one by one: the columns go smoothly with the reader that is right. Where they do not
 * tell both go on being heard. @param cells [row][column]
 */
export function settleHabits(
  cells: readonly (readonly ReadCell[])[],
  field: SheetInk['field'],
  digits: DigitReader,
): Settled {
  const pairs = cells.flat().flatMap(({ heard }) => {
    const [own] = heard.own;
    const [said] = heard.reads;
    return own && said ? [{ digits: figuresOf(own.text), words: figuresOf(plainNumber(said.text)) }] : [];
  });
  let settled = UNSETTLED;
  for (const habit of habitsOf(pairs)) {
    const deaf: Settled = { ...settled, deaf: [...settled.deaf, habit] };
    const open: Settled = { ...settled, open: [...settled.open, habit] };
    const better = fitOf(cells, field, digits, open) - fitOf(cells, field, digits, deaf);
    if (better > BETTER) settled = open;
    else if (better < WORSE) settled = deaf;
  }
  return settled;
}

/** The cells with their spellings as both readers make them, habits settled. */
export function respelt(
  cells: readonly (readonly ReadCell[])[],
  field: SheetInk['field'],
  digits: DigitReader,
  settled: Settled,
): ReadCell[][] {
  return cells.map((row) => row.map((cell) => ({ ...cell, spellings: spelt(cell.heard, field, digits, settled) })));
}

const figuresOf = (text: string): string => text.replace('.', '');

function fitOf(
  cells: readonly (readonly ReadCell[])[],
  field: SheetInk['field'],
  digits: DigitReader,
  settled: Settled,
): number {
  const rows = respelt(cells, field, digits, settled);
  const columns = (rows[0] ?? []).map((_, c) => rows.map((row) => row[c]!.spellings));
  return columns.reduce((sum, column) => sum + columnFit(column), 0);
}
