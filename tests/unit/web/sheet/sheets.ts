import type { ColumnQuantity, SheetCell, SheetReading } from '../../../../web/sheet/sheet-reading.ts';
import { startSheet, type SheetWork } from '../../../../web/sheet/sheet-work.ts';

export const MM_WATER = 9.80665;

/** A sheet of two rows as the server reads it: columns by quantity and unit, values in SI, every cell sure. */
export function sheetOf(
  columns: readonly (readonly [ColumnQuantity | null, string | null])[],
  rows: (number | null)[][],
  more: Partial<SheetReading> = {},
): SheetReading {
  return {
    fields: {},
    columns: columns.map(([quantity, unit]) => ({ quantity, unit })),
    rows,
    cells: rows.map((row, r) => row.map((_, c) => cellAt(r, c, false))),
    warnings: [],
    ...more,
  };
}

/** A cell in its place on the photo; nothing is said of what was printed. */
export const cellAt = (row: number, column: number, needsReview: boolean): SheetCell => ({
  confidence: needsReview ? 0.5 : 0.95,
  needsReview,
  box_px: [100 + 120 * column, 400 + 50 * row, 120, 50],
  asPrinted: '',
});

export const workOfSheet = (reading: SheetReading, more: Partial<SheetWork> = {}): SheetWork => ({
  ...startSheet({ photoId: 'sheet', width_px: 1600, height_px: 1200 }),
  reading,
  ...more,
});
