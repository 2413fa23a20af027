/**
 * Share of its rated power a motor may give at a height and air temperature.
 * @param altitude_m height above sea level [m]; unknown counts as low
 * @param ambient_C temperature of the cooling air [°C]; unknown counts as 40 °C, what plates are made for
 * @returns factor [-], 1 down to 0.5; cool mountain air makes up for its thinness
 * The permitted temperature rise (80 K, class B) falls 1 % for each 100 m above 1,000 m, as if the air were 0.8 K warmer; above
 * 40 °C the output falls as in the table. A fan's own load falls faster with density than this does.
 * Source: IEC 60034-1 and common practice tables, recalled; grade memory, ± 0.02.
 */
export function siteDerating(altitude_m: number | null | undefined, ambient_C: number | null | undefined): number {
  const felt_C = (ambient_C ?? 40) + 0.008 * Math.max((altitude_m ?? 0) - STANDARD_ALTITUDE_M, 0);
  return interpolated(OUTPUT_AT_AMBIENT, felt_C);
}

/** Height up to which ratings hold as printed [m]. Source: IEC 60034-1. */
export const STANDARD_ALTITUDE_M = 1000;

/**
 * The service factor that may be counted on: none of it above 1,000 m, where thin air has used it up; a factor below 1 always holds.
 * Source: NEMA MG 1 (service conditions), recalled.
 */
export function usableServiceFactor(serviceFactor: number, altitude_m: number | null | undefined): number {
  return altitude_m != null && altitude_m > STANDARD_ALTITUDE_M ? Math.min(serviceFactor, 1) : serviceFactor;
}

/** Voltage unbalance [-] = largest deviation from the mean ÷ mean. Source: NEMA MG 1. Throws RangeError for less than three voltages or a mean of 0. */
export function voltageUnbalance(volts: readonly number[]): number {
  const mean = volts.reduce((sum, v) => sum + v, 0) / volts.length;
  if (volts.length !== 3 || !(mean > 0))
    throw new RangeError(`volts: expected three voltages, received ${volts.join(', ')}`);
  return Math.max(...volts.map((v) => Math.abs(v - mean))) / mean;
}

/** What unbalanced mains does to a three-phase motor. */
export type UnbalanceEffect = {
  /** share of rated power that is left [-] */
  powerFactor: number;
  /** extra temperature rise, relative [-] */
  extraHeat: number;
  /** unbalance of the currents [-], range */
  currentUnbalance: [low: number, high: number];
  /** above 5 % the motor must not run */
  mustNotRun: boolean;
};

/**
 * Effect of a voltage unbalance [-] on a three-phase motor: power by the curve of NEMA MG 1 (held at 0.75 beyond 5 %, where it must
 * not run), heat 2·(percent)², currents 6–10 times as unbalanced as the voltages. Recalled; grade memory, ± 0.02.
 */
export function unbalanceEffect(unbalance: number): UnbalanceEffect {
  const percent = 100 * unbalance;
  return {
    powerFactor: interpolated(OUTPUT_AT_UNBALANCE, percent),
    extraHeat: (2 * percent ** 2) / 100,
    currentUnbalance: [6 * unbalance, 10 * unbalance],
    mustNotRun: percent > 5,
  };
}

/** Cooling air [°C] → share of rated power. Common practice table, recalled; beyond 60 °C carried on at 1 % a kelvin. */
const OUTPUT_AT_AMBIENT = [
  [40, 1],
  [45, 0.96],
  [50, 0.92],
  [55, 0.87],
  [60, 0.82],
  [92, 0.5],
] as const;

/** Voltage unbalance [%] → share of rated power. Source: NEMA MG 1 section 14.36, curve read off, recalled. */
const OUTPUT_AT_UNBALANCE = [
  [1, 1],
  [2, 0.95],
  [3, 0.88],
  [4, 0.82],
  [5, 0.75],
] as const;

function interpolated(table: readonly (readonly [number, number])[], x: number): number {
  const after = table.findIndex(([at]) => at >= x);
  if (after === -1) return table.at(-1)![1];
  if (after === 0) return table[0]![1];
  const [[x0, y0], [x1, y1]] = [table[after - 1]!, table[after]!];
  return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}
