import { toBase } from '../units/names.ts';
import type { ReadCell } from './cells/read-cells.ts';
import type { Weighed } from './columns/weigh-column.ts';
import { columnTrust } from './doubts/column-trust.ts';
import { contradicted } from './doubts/column-witness.ts';
import { lostPoints } from './doubts/lost-points.ts';
import { mixesOnesAndSevens } from './doubts/odd-hand.ts';
import { areTorn, rowDoubts } from './doubts/row-doubts.ts';
import type { FoundTable } from './find-table.ts';
import type { NamedColumn } from './heads/name-columns.ts';
import type { SheetCell, SheetReading } from './reading.ts';
import type { TableSurface } from './table/table-surface.ts';

/** Cells and columns surer than this need no look. */
const SURE_CELL = 0.97;
const SURE_COLUMN = 0.6;
/**
 * A cell without a stroke in it is empty; one with ink that reads as nothing hardly is; a stain may hide digits, and a
 * number that goes on beside its cell has more of them.
 */
const SURE_BARE = 0.985;
const UNREAD = 0.3;
const STAINED = 0.6;

/** A row that may be in a wrong place holds right values in vain. */
const MISPLACED = 0.5;

/** So much is left of the trust in a column that goes against the others or lost its points, and in sevens that may be ones. */
const CONTRADICTED = 0.5;
const POINTLESS = 0.5;
const MIXED = 0.5;

/** The answer: values in SI, doubts, places in the photo. Rows at the end in which nothing stands are left out. */
export function putTogether(
  { table, columns, grid, isFirstSure }: FoundTable,
  fields: SheetReading['fields'],
  cells: readonly (readonly ReadCell[])[],
  weighed: readonly (readonly (Weighed | null)[])[],
): SheetReading {
  // a last row has something in every third column at least: else it is a stain
  const isFilled = (r: number) =>
    cells[r]!.filter(({ content }) => content.kind !== 'empty').length >= Math.max(1, columns.length / 3);
  const last = cells.findLastIndex((_, r) => isFilled(r));
  const rows = cells.slice(0, last + 1);
  const numbers = columns.findIndex(({ quantity }) => quantity === 'opening');
  const isMisplaced = rowDoubts({ isDoubtful: grid.isDoubtful, isFirstSure }, weighed[numbers] ?? null);
  const isTorn = areTorn(rows.map((row) => row.map(({ content }) => content.kind !== 'empty')));
  const trust = columns.map((_, c) =>
    columnTrust(
      rows.map((row) => row[c]!),
      weighed[c]!.slice(0, rows.length),
    ),
  );
  const against = contradicted(columns.map(({ quantity }, c) => ({ quantity, values: weighed[c]! })));
  const arePointless = lostPoints(columns.map((column, c) => ({ ...column, values: weighed[c]! })));
  const areMixed = mixesOnesAndSevens(weighed.flat().flatMap((read) => read?.text ?? []));
  const doubt = (r: number, c: number) =>
    trust[c]! *
    (isMisplaced[r] || isTorn ? MISPLACED : 1) *
    (against[c] ? CONTRADICTED : 1) *
    (arePointless[c] ? POINTLESS : 1) *
    (areMixed && weighed[c]![r]?.text.includes('7') ? MIXED : 1);
  return {
    fields,
    columns: columns.map(({ quantity, unit }) => ({ quantity, unit: unit?.unit ?? null })),
    rows: rows.map((row, r) => row.map((_, c) => valueOf(weighed[c]![r] ?? null, columns[c]!))),
    cells: rows.map((row, r) =>
      row.map((cell, c) =>
        cellOf(cell, weighed[c]![r] ?? null, columns[c]!, doubt(r, c), boxOf(table, 1 + r, cell.column)),
      ),
    ),
    warnings: [],
  };
}

const valueOf = (weighed: Weighed | null, { unit, quantity }: NamedColumn): number | null => {
  if (!weighed) return null;
  if (!unit) return weighed.value;
  // an opening is a percentage by name
  return quantity === 'opening_pct' ? weighed.value : toBase(weighed.value, unit);
};

function cellOf(
  { content, isStained, isCut }: ReadCell,
  weighed: Weighed | null,
  { quantity, unit, sureness }: NamedColumn,
  doubt: number,
  box_px: SheetCell['box_px'],
): SheetCell {
  const isKnown = quantity !== null && (unit !== null || quantity === 'opening') && sureness >= SURE_COLUMN;
  const isBare = content.kind === 'empty' && content.isBare;
  const chance = (weighed?.chance ?? (isBare ? SURE_BARE : UNREAD)) * (isStained || isCut ? STAINED : 1) * doubt;
  return {
    confidence: chance * (isKnown ? 1 : 0.5),
    needsReview: !isKnown || chance < SURE_CELL,
    box_px,
    asPrinted: weighed?.text ?? '',
  };
}

/** The box around a cell in the photo. */
function boxOf({ surface, xs, ys }: TableSurface, row: number, column: number): SheetCell['box_px'] {
  const corners = [ys[row]!, ys[row + 1]!].flatMap((y) =>
    [xs[column]!, xs[column + 1]!].map((x) => surface.toPhoto(x, y)),
  );
  const [us, vs] = [corners.map(([u]) => u), corners.map(([, v]) => v)];
  const [x, y] = [Math.min(...us), Math.min(...vs)];
  return [x, y, Math.max(...us) - x, Math.max(...vs) - y].map(Math.round) as unknown as SheetCell['box_px'];
}
