import type { Warning } from '../../src/issues/result.ts';

/** Quantities a column of a reading sheet may have. */
export const COLUMN_QUANTITIES = [
  'opening',
  'opening_pct',
  'orificeDiameter_m',
  'staticPressure_Pa',
  'velocityPressure_Pa',
  'velocity_m_s',
  'flow_m3_s',
  'current_A',
  'speed_rpm',
  'inputPower_W',
] as const;
export type ColumnQuantity = (typeof COLUMN_QUANTITIES)[number];

export const HEAD_FIELDS = ['voltage_V', 'frequency_Hz', 'ductDiameter_m', 'airTemperature_C', 'barometer_Pa'] as const;
export type HeadField = (typeof HEAD_FIELDS)[number];

type Box = readonly [number, number, number, number];
export type SheetColumn = { quantity: ColumnQuantity | null; unit: string | null; needsReview?: boolean; box_px?: Box };
export type SheetCell = { confidence: number; needsReview: boolean; asPrinted?: string; box_px?: Box };
export type SheetHead = {
  value: number | readonly number[];
  asPrinted?: string;
  box_px?: Box;
  confidence: number;
  needsReview: boolean;
};

/** A reading sheet as the server reads it: values in SI, row by row; an empty cell is null. */
export type SheetReading = {
  fields: { [Name in HeadField]?: SheetHead };
  columns: SheetColumn[];
  rows: (number | null)[][];
  cells: SheetCell[][];
  corners_px?: (readonly [number, number])[];
  warnings: Warning[];
};
