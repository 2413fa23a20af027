import type { Warning } from '../issues/result.ts';

/** Every field a plate may have. */
export const FIELD_NAMES = [
  'ratedPower_W',
  'voltage_V',
  'current_A',
  'frequency_Hz',
  'phases',
  'powerFactor',
  'efficiency',
  'speed_rpm',
  'serviceFactor',
  'capacitor_uF',
  'startCapacitor_uF',
  'capacitorVoltage_V',
  'duty',
  'insulationClass',
  'ipRating',
  'efficiencyClass',
  'codeLetter',
  'designLetter',
  'frameSize',
  'serialNumber',
  'year',
  'mass_kg',
  'ambient_C',
  'airTemperature_C',
  'flow_m3_s',
  'pressure_Pa',
  'wheelDiameter_m',
] as const;
export type FieldName = (typeof FIELD_NAMES)[number];

export type FieldValue = number | string | readonly (number | string)[];

/** One field as it was read: SI, the list of its different values where the plate has several. */
export type PlateField = {
  readonly value: FieldValue;
  /** digits and unit as they stand on the plate, several parted by a blank and a stroke; empty where worked out */
  readonly asPrinted: string;
  /** x, y, width, height in the photo [px] */
  readonly box_px: readonly [number, number, number, number];
  /** the chance that the value is what is printed, 0..1 */
  readonly confidence: number;
  readonly needsReview: boolean;
  /** worked out from other fields, not read */
  readonly derived?: true;
};

export type PlateFields = { [Name in FieldName]?: PlateField };
/** One rating row of several: what stands in it. */
export type Rating = { [Name in FieldName]?: number | string | readonly (number | string)[] };

export type PlateReading = {
  readonly fields: PlateFields;
  readonly ratings?: readonly Rating[];
  readonly ratedPowerMeaning: 'shaft' | 'input';
  /** corners of the plate in the photo, from the top left clockwise as one reads it */
  readonly corners_px: readonly (readonly [number, number])[];
  readonly warnings: readonly Warning[];
};
