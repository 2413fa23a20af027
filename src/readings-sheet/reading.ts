import type { Warning } from '../issues/result.ts';
import type { ColumnQuantity, HeadQuantity } from './quantities.ts';

type Box = readonly [number, number, number, number];

/** A value of the sheet's head, SI; voltages are a list. */
export type HeadField = {
  readonly value: number | readonly number[];
  readonly asPrinted: string;
  /** x, y, width, height in the photo [px] */
  readonly box_px: Box;
  /** the chance that the value is what stands there, 0..1 */
  readonly confidence: number;
  readonly needsReview: boolean;
};

/** `quantity` and `unit` are null where what stands over the column could not be read; its values are then as written. */
export type SheetColumn = { readonly quantity: ColumnQuantity | null; readonly unit: string | null };

export type SheetCell = {
  readonly confidence: number;
  readonly needsReview: boolean;
  readonly box_px: Box;
  /** what was read, a point for any decimal mark; empty where nothing stands */
  readonly asPrinted: string;
};

/** A sheet of readings: values in SI, null where a cell is empty; cells in the order of the rows. */
export type SheetReading = {
  readonly fields: { readonly [Name in HeadQuantity]?: HeadField };
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly (readonly (number | null)[])[];
  readonly cells: readonly (readonly SheetCell[])[];
  readonly warnings: readonly Warning[];
};
