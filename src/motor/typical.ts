import { IEC_CLASSES, IEC_EFFICIENCY } from './tables/iec-efficiency.ts';
import type { IecClass } from './tables/iec-efficiency.ts';
import { US_EFFICIENCY } from './tables/us-efficiency.ts';
import type { UsLevel } from './tables/us-efficiency.ts';
import {
  SINGLE_PHASE_CURRENT,
  SINGLE_PHASE_VOLTS,
  THREE_PHASE_CURRENT,
  THREE_PHASE_VOLTS,
} from './tables/full-load-current.ts';

/** One mechanical horsepower [W]. Source: definition, 550 ft·lbf/s. */
export const HORSEPOWER_W = 745.6998715822702;

/**
 * Nominal full-load efficiency of a three-phase 50 Hz motor.
 * @param ratedPower_W shaft power [W]
 * @param poles 2 or 4; more poles are taken as 4
 * @returns efficiency [-], straight between the table's sizes in the logarithm of power, held beyond its ends
 * Source: IEC 60034-30-1:2014 (tables/iec-efficiency.ts).
 */
export function iecEfficiency(ratedPower_W: number, poles: number, level: IecClass): number {
  const column = IEC_CLASSES.indexOf(level) + 1;
  return between(IEC_EFFICIENCY[poles <= 2 ? 2 : 4], ratedPower_W / 1000, (row) => row[column]!) / 100;
}

/**
 * Nominal full-load efficiency of a three-phase 60 Hz motor of the US.
 * @param ratedPower_W shaft power [W]
 * @returns efficiency [-], straight between the table's sizes in the logarithm of power, held beyond its ends
 * Source: tables/us-efficiency.ts.
 */
export function usEfficiency(
  ratedPower_W: number,
  poles: number,
  level: UsLevel,
  enclosure: 'open' | 'enclosed' = 'open',
): number {
  const column = poles <= 2 ? 3 : poles <= 4 ? 2 : 1;
  const rows = US_EFFICIENCY[level][enclosure].filter((row) => row[column] !== null);
  if (rows.length === 0)
    throw new RangeError(`enclosure: expected one that the ${level} level has, received ${enclosure}`);
  return between(rows, ratedPower_W / HORSEPOWER_W, (row) => row[column] as number) / 100;
}

/**
 * Full-load current of a 60 Hz motor as wiring rules expect it, generous.
 * @returns line current [A]; between the table's voltages the nearest one is taken and volts times amps kept; beyond its sizes in proportion to power
 * Source: US National Electrical Code tables 430.248 and 430.250 (tables/full-load-current.ts).
 */
export function fullLoadCurrent(ratedPower_W: number, voltage_V: number, phases: 1 | 3): number {
  const table = phases === 3 ? THREE_PHASE_CURRENT : SINGLE_PHASE_CURRENT;
  const volts: readonly number[] = phases === 3 ? THREE_PHASE_VOLTS : SINGLE_PHASE_VOLTS;
  const off = volts.map((v) => Math.abs(Math.log(voltage_V / v)));
  const column = off.indexOf(Math.min(...off));
  const hp = ratedPower_W / HORSEPOWER_W;
  const inside = Math.min(Math.max(hp, table[0]![0]), table.at(-1)![0]);
  return (between(table, inside, (row) => row[column + 1]!) * (hp / inside) * volts[column]!) / voltage_V;
}

/**
 * Power factor at full load of a typical small induction motor.
 * @returns power factor [-], 0.55..0.92; ± 0.05 on three phases, ± 0.1 on one (capacitor-run motors reach 0.95, capacitor-start ones 0.65)
 * Source: makers' catalogues in common, recalled; grade memory. Three phases 2 poles: 0.79 at 0.37 kW, 0.83 at 0.75, 0.88 at 7.5;
 * 4 poles: 0.73, 0.76, 0.84; 6 poles: 0.66, 0.70, 0.79.
 */
export function typicalPowerFactor(ratedPower_W: number, poles: number, phases: 1 | 3): number {
  if (phases === 1) return 0.8;
  const [at750W, perE] = poles <= 2 ? [0.83, 0.022] : poles <= 4 ? [0.76, 0.035] : [0.7, 0.04];
  return Math.min(Math.max(at750W + perE * Math.log(ratedPower_W / 750), 0.55), 0.92);
}

/**
 * Full-load efficiency of a typical second-hand induction motor.
 * @returns efficiency [-]; doubt 5 % relative on three phases, 10 % on one
 * The class of old motors: IE1 at 50 Hz; at 60 Hz the small-motor level below 1 hp, the 1992 level above. A single-phase winding
 * costs a tenth of it (practice value: small scrap motors have 0.5–0.75). Rewinding takes up to 2 points, inside the doubt.
 */
export function typicalEfficiency(ratedPower_W: number, poles: number, phases: 1 | 3, frequency_Hz: number): number {
  const level = ratedPower_W < HORSEPOWER_W ? 'small polyphase' : '1992 act';
  const threePhase =
    frequency_Hz > 55
      ? usEfficiency(ratedPower_W, poles, level, level === '1992 act' ? 'enclosed' : 'open')
      : iecEfficiency(ratedPower_W, poles, 'IE1');
  return phases === 3 ? threePhase : 0.9 * threePhase;
}

function between<Row extends readonly [number, ...(number | null)[]]>(
  rows: readonly Row[],
  x: number,
  pick: (row: Row) => number,
): number {
  const after = rows.findIndex((row) => row[0] >= x);
  if (after === -1) return pick(rows.at(-1)!);
  if (after === 0 || rows[after]![0] === x) return pick(rows[after]!);
  const [low, high] = [rows[after - 1]!, rows[after]!];
  const share = Math.log(x / low[0]) / Math.log(high[0] / low[0]);
  return pick(low) + share * (pick(high) - pick(low));
}
