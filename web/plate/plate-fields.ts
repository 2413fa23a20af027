import type { FieldName } from '../../src/plate/reading.ts';
import type { Quantity } from '../../src/units/index.ts';

/** A figure of a plate that a blower's form has a place for. */
export type PlateFigure = Exclude<FieldName, keyof typeof LEFT_ON_PLATE>;

/**
 * How a figure is written into its field. `unit`: of a bare number, where it is not the one this user reads the quantity in.
 * `power`, `air`: what a motor's or a bare blower's plate must say, so that a gap is named.
 */
export type FigureForm = {
  readonly name: PlateFigure;
  readonly quantity: Quantity;
  readonly unit?: string;
  readonly needed: readonly PlateKind[];
};

/** A motor's plate speaks of volts and amps; a bare blower's of air and its wheel. */
export type PlateKind = 'motor' | 'blower';

const MOTOR = ['motor'] as const;
const BOTH = ['motor', 'blower'] as const;

/** Figures in the order in which plates print them. */
export const FIGURES: readonly FigureForm[] = [
  { name: 'ratedPower_W', quantity: 'power', needed: BOTH },
  { name: 'voltage_V', quantity: 'voltage', needed: MOTOR },
  { name: 'current_A', quantity: 'current', needed: MOTOR },
  { name: 'speed_rpm', quantity: 'speed', needed: BOTH },
  { name: 'frequency_Hz', quantity: 'frequency', needed: MOTOR },
  { name: 'phases', quantity: 'fraction', unit: '1', needed: MOTOR },
  { name: 'powerFactor', quantity: 'fraction', unit: '1', needed: [] },
  { name: 'efficiency', quantity: 'fraction', unit: '%', needed: [] },
  { name: 'serviceFactor', quantity: 'fraction', unit: '1', needed: [] },
  { name: 'capacitor_uF', quantity: 'capacity', needed: [] },
  { name: 'startCapacitor_uF', quantity: 'capacity', needed: [] },
  { name: 'wheelDiameter_m', quantity: 'length', needed: [] },
  { name: 'flow_m3_s', quantity: 'flow', needed: [] },
  { name: 'pressure_Pa', quantity: 'pressure', needed: [] },
];

/** What a job has no place for: it is shown, and stays on the photo that is kept. */
export const LEFT_ON_PLATE = {
  duty: true,
  insulationClass: true,
  ipRating: true,
  efficiencyClass: true,
  frameSize: true,
  serialNumber: true,
  year: true,
  mass_kg: true,
  ambient_C: true,
  airTemperature_C: true,
  codeLetter: true,
  designLetter: true,
  capacitorVoltage_V: true,
} as const;
export type LeftOnPlate = keyof typeof LEFT_ON_PLATE;
