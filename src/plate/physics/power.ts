import { HORSEPOWER_W, polesOf, typicalEfficiency, typicalPowerFactor } from '../../motor/index.ts';

/** Electrical values of a plate, one reading of each; null: not printed, or not what was read. */
export type Electrical = {
  readonly ratedPower_W: number | null;
  readonly voltage_V: readonly number[] | null;
  readonly current_A: readonly number[] | null;
  readonly powerFactor: number | null;
  readonly efficiency: number | null;
  readonly phases: 1 | 3 | null;
};
/** What else bears on them. */
export type Motor = {
  readonly speed_rpm: number | null;
  readonly frequency_Hz: number | null;
  readonly isInput: boolean;
};

/** Plates round volts, amps, power factor and efficiency to two or three figures: one standard deviation of their product. */
const ROUNDING = 0.045;
/** Spread of what a typical motor of the size has, where a plate does not say: power factor, efficiency, relative. */
const TYPICAL = { 3: { powerFactor: 0.09, efficiency: 0.07 }, 1: { powerFactor: 0.16, efficiency: 0.14 } } as const;
/** Two currents of one motor at its two voltages. */
const PAIR_ROUNDING = 0.03;
/** One plate in twenty-five does not follow: rewound, misprinted, or for other reasons. */
const ODD_PLATE = 0.04;
/** A ratio that follows nothing lies anywhere within a factor of thirty either way: its density in the logarithm. */
const ANYWHERE = 1 / (2 * Math.log(30));

/** How well values agree: the density of their ratio against that of a ratio of nothing, as a logarithm; and whether they don't. */
export type Agreement = { readonly support: number; readonly isAtOdds: boolean };
export const NO_WORD: Agreement = { support: 0, isAtOdds: false };

/**
 * Power against volts, amps, power factor and efficiency.
 * Source: P = √3·U·I·cos φ·η on three phases, U·I·cos φ·η on one (definition); typical values of src/motor.
 */
export function powerAgreement(values: Electrical, motor: Motor): Agreement {
  const { ratedPower_W, voltage_V, current_A } = values;
  if (ratedPower_W === null || !voltage_V || !current_A) return NO_WORD;
  const pairs = pairsOf(voltage_V, current_A);
  if (!pairs.length) return NO_WORD;
  const phases = values.phases ?? (motor.isInput ? 1 : likelyPhases(ratedPower_W, pairs[0]!));
  const { expected, spread } = expectedWatts(ratedPower_W, phases, values, motor);
  const ratios = pairs.map(([volts, amps]) =>
    Math.log(ratedPower_W / ((phases === 3 ? Math.sqrt(3) : 1) * volts * amps * expected)),
  );
  const mean = ratios.reduce((sum, r) => sum + r, 0) / ratios.length;
  return agreementOf(mean, spread);
}

/** Two currents stand for two voltages: volts times amps stay. Source: one winding, two connections, one power. */
export function pairAgreement({ voltage_V, current_A }: Electrical): Agreement {
  if (!voltage_V || !current_A || voltage_V.length < 2 || voltage_V.length !== current_A.length) return NO_WORD;
  const products = pairsOf(voltage_V, current_A).map(([volts, amps]) => Math.log(volts * amps));
  return agreementOf(Math.max(...products) - Math.min(...products), PAIR_ROUNDING * 1.5);
}

/** Volts and amps that belong together: in the printed order, or the highest voltage with the lowest current. */
function pairsOf(volts: readonly number[], amps: readonly number[]): (readonly [number, number])[] {
  if (amps.length === 1)
    return volts.length === 1 ? [[volts[0]!, amps[0]!]] : volts.map((v) => [v, amps[0]!] as const).slice(0, 1);
  if (volts.length !== amps.length) return [[Math.min(...volts), Math.max(...amps)]];
  const up = volts.toSorted((a, b) => a - b);
  const down = amps.toSorted((a, b) => b - a);
  return up.map((v, i) => [v, down[i]!] as const);
}

/** Watts at the shaft for each volt-ampere, and the doubt of that. */
function expectedWatts(
  power_W: number,
  phases: 1 | 3,
  values: Electrical,
  { speed_rpm, frequency_Hz, isInput }: Motor,
) {
  const poles = (speed_rpm !== null && polesOf(speed_rpm, frequency_Hz ?? 50)) || 4;
  const size_W = Math.min(Math.max(power_W, 0.1 * HORSEPOWER_W), 300_000);
  const powerFactor = values.powerFactor ?? (isInput ? 0.95 : typicalPowerFactor(size_W, poles, phases));
  const efficiency = isInput ? 1 : (values.efficiency ?? typicalEfficiency(size_W, poles, phases, frequency_Hz ?? 50));
  const doubt = TYPICAL[phases];
  const spread = Math.hypot(
    ROUNDING,
    values.powerFactor === null ? doubt.powerFactor : 0,
    values.efficiency === null && !isInput ? doubt.efficiency : 0,
  );
  return { expected: powerFactor * efficiency, spread };
}

const likelyPhases = (power_W: number, [volts, amps]: readonly [number, number]): 1 | 3 =>
  power_W / (volts * amps) < 0.88 ? 1 : 3;

/** A logarithm of a ratio that should be nought, give or take its spread. */
function agreementOf(logRatio: number, spread: number): Agreement {
  const agrees = ((1 - ODD_PLATE) * Math.exp(-0.5 * (logRatio / spread) ** 2)) / (spread * Math.sqrt(2 * Math.PI));
  const odd = ODD_PLATE * ANYWHERE;
  return { support: Math.log((agrees + odd) / ANYWHERE), isAtOdds: odd > agrees };
}

/** Mass of a cast or aluminium induction motor [kg] about 15·(P/kW)^0.75; makers differ by this, one standard deviation of the logarithm. */
const MASS = { ofKilowatt_kg: 15, exponent: 0.75, spread: 0.45 };

/** Power against the motor's mass. Source: makers' catalogues in common (0.25 kW 5 kg, 2.2 kW 25 kg, 11 kW 90 kg); practice values. */
export function massAgreement(power_W: number | null, mass_kg: number | null): Agreement {
  if (power_W === null || mass_kg === null) return NO_WORD;
  const usual_kg = MASS.ofKilowatt_kg * (power_W / 1000) ** MASS.exponent;
  // a plate's mass may be that of a whole machine: it speaks, but never says no
  return { ...agreementOf(Math.log(mass_kg / usual_kg), MASS.spread), isAtOdds: false };
}
