import type { ColumnQuantity, SheetReading } from '../../../../web/sheet/sheet-reading.ts';
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
    cells: rows.map((row) => row.map(() => ({ confidence: 0.9, needsReview: false }))),
    warnings: [],
    ...more,
  };
}

export const workOfSheet = (reading: SheetReading, more: Partial<SheetWork> = {}): SheetWork => ({
  ...startSheet({ photoId: 'sheet', width_px: 1600, height_px: 1200 }),
  reading,
  ...more,
});
