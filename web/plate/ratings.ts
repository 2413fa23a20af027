import type { Supply } from '../../src/job/types.ts';
import { usualVoltage } from '../../src/motor/connection.ts';
import type { FieldName, FieldValue, PlateReading } from '../../src/plate/reading.ts';

/** One way to run the motor: the figures that hold for it. `joint`: how its windings are joined, where the volts tell. */
export type RatingChoice = {
  readonly values: { readonly [Name in FieldName]?: number };
  readonly joint: 'star' | 'delta' | null;
};

type Row = { readonly [Name in FieldName]?: FieldValue };
type Values = { [Name in FieldName]?: number };

/** Figures that are the same at any mains and no part of a choice. */
const COMMON: readonly FieldName[] = ['capacitor_uF', 'startCapacitor_uF', 'capacitorVoltage_V', 'year', 'mass_kg'];

const numbersIn = (value: FieldValue | undefined): number[] =>
  (Array.isArray(value) ? value : [value]).filter((one): one is number => typeof one === 'number');

/**
 * The ways a plate says its motor may be run, one by one: its rating rows where it has several, the volts of star and delta
 * each with their amps, 50 Hz and 60 Hz each with their speed. A single way for most plates.
 */
export function ratingsOf(reading: PlateReading): RatingChoice[] {
  const whole: Row = Object.fromEntries(Object.entries(reading.fields).map(([name, field]) => [name, field.value]));
  const rows: readonly Row[] = reading.ratings && reading.ratings.length > 1 ? reading.ratings : [whole];
  const choices = rows.flatMap((row) => byFrequency(row).flatMap(byVoltage));
  const seen = new Set<string>();
  return choices.filter(({ values }) => {
    const key = JSON.stringify(values);
    return seen.size < seen.add(key).size;
  });
}

/** Higher volts go with fewer amps, whatever their order: the power is the same. */
function byVoltage(row: Row): RatingChoice[] {
  const volts = numbersIn(row.voltage_V).toSorted((a, b) => a - b);
  const amps = numbersIn(row.current_A).toSorted((a, b) => b - a);
  if (volts.length < 2) return [{ values: single(row), joint: null }];
  const range = rangesOf(volts);
  const star_V = volts[range.indexOf(1)] ?? 0;
  const isStarDelta = range.at(-1) === 1 && Math.abs(star_V / volts[0]! / Math.sqrt(3) - 1) < 0.08;
  return volts.map((voltage_V, i) => {
    const current_A =
      amps.length === volts.length ? amps[i] : amps.length === range.at(-1)! + 1 ? amps[range[i]!] : undefined;
    return {
      values: { ...single({ ...row, current_A: undefined }), voltage_V, ...(current_A !== undefined && { current_A }) },
      joint: isStarDelta ? (range[i] === 0 ? 'delta' : 'star') : null,
    };
  });
}

/** Volts nearer to each other than this are one range, run with the same amps: 380 to 415, 208 to 230. */
const A_RANGE = 1.25;

/** For each of rising volts the number of its range, from 0. */
function rangesOf(volts: readonly number[]): number[] {
  let range = 0;
  return volts.map((value, i) => (i > 0 && value > A_RANGE * volts[i - 1]! ? (range += 1) : range));
}

/** A row of two frequencies as two rows: what it prints as often as frequencies goes with them in the printed order. */
function byFrequency(row: Row): Row[] {
  const frequencies = numbersIn(row.frequency_Hz);
  if (frequencies.length < 2) return [row];
  const volts = numbersIn(row.voltage_V);
  const ownVolts = volts.length === frequencies.length && Math.max(...volts) < A_RANGE * Math.min(...volts);
  return frequencies.map((frequency_Hz, i) => {
    const goesWith = (name: string, values: number[]): boolean =>
      values.length === frequencies.length &&
      (name === 'voltage_V' ? ownVolts : name === 'current_A' ? ownVolts || volts.length < 2 : true);
    const entries = Object.entries(row).map(([name, value]) => {
      const values = numbersIn(value);
      return [name, goesWith(name, values) ? values[i] : value] as const;
    });
    return { ...Object.fromEntries(entries), frequency_Hz };
  });
}

/** Figures of a row that stand there once; of others nobody knows which counts. */
function single(row: Row): Values {
  const values: Values = {};
  for (const [name, value] of Object.entries(row) as [FieldName, FieldValue | undefined][]) {
    const numbers = numbersIn(value);
    if (numbers.length === 1 && !COMMON.includes(name)) values[name] = numbers[0]!;
  }
  return values;
}

/** Index of the way that suits a mains best: its frequency first, then the nearest volts. */
export function suitedTo(choices: readonly RatingChoice[], supply: Supply, phases: 1 | 3 | null): number {
  const hangsBetweenLines = phases === 1 || supply.voltage_V == null;
  const wanted_V = hangsBetweenLines ? usualVoltage(phases ?? supply.phases ?? 3, supply) : supply.voltage_V!;
  const wanted_Hz = supply.frequency_Hz ?? 50;
  const misfit = ({ values }: RatingChoice): number =>
    (values.frequency_Hz === undefined || values.frequency_Hz === wanted_Hz ? 0 : ANOTHER_FREQUENCY) +
    (values.voltage_V === undefined ? 0 : Math.abs(Math.log(values.voltage_V / wanted_V)));
  const misfits = choices.map(misfit);
  return Math.max(0, misfits.indexOf(Math.min(...misfits)));
}

/** As bad as volts nearly three times too many. */
const ANOTHER_FREQUENCY = 1;
