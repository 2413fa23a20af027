/** What a voltage below the plate's does to an induction motor, all against the plate's voltage [-]. */
export type LowVoltageEffect = {
  /** torque left, starting torque too */
  torque: number;
  /** slip at the same load */
  slip: number;
  /** heat in the rotor at the same load */
  rotorHeat: number;
};

/**
 * Effect of the voltage ratio V/V_plate: torque with its square, slip and rotor heat with the inverse square.
 * Source: induction machine at constant flux per volt; NEMA table: at 90 % torque −19 %, slip +23 %; at 80 % torque 64 %.
 * Throws RangeError for a ratio that is not positive.
 */
export function lowVoltageEffect(voltageRatio: number): LowVoltageEffect {
  if (!(voltageRatio > 0)) throw new RangeError(`voltageRatio: expected a positive number, received ${voltageRatio}`);
  const torque = voltageRatio ** 2;
  return { torque, slip: 1 / torque, rotorHeat: 1 / torque };
}

/** Greatest torque of ordinary induction motors over rated torque [-]; single-phase ones have less. Source: NEMA MG 1 design B 2.0–2.7, recalled. */
export const PULL_OUT_TORQUE = { 3: 2.2, 1: 1.8 } as const;

/**
 * Whether a motor may stop turning and burn: its load needs more torque than the voltage leaves.
 * @param loadOfRating shaft power ÷ rated power, without service factor [-]
 * @param voltageRatio volts ÷ plate volts [-]
 * Source: `PULL_OUT_TORQUE` and `lowVoltageEffect`.
 */
export function mayStall(loadOfRating: number, voltageRatio: number, phases: 1 | 3): boolean {
  return loadOfRating > PULL_OUT_TORQUE[phases] * lowVoltageEffect(voltageRatio).torque;
}

/** What is left of a three-phase motor on one phase with a capacitor. */
export type SinglePhaseFeed = {
  /** share of rated power, range [-] */
  availableShare: [low: number, high: number];
  /** two-pole motors start worst this way, some not at all */
  mayNotStart: boolean;
  text: string;
};

/**
 * A three-phase motor fed from one phase through a capacitor.
 * @param ratedPower_W shaft power on the plate [W]
 * @param poles of the motor, null if unknown: taken as two, as most blowers have
 * Source: trade notes, 60–70 % up to 0.75 kW, 40–60 % up to 2.2 kW; above that not advised (taken as 30–50 %).
 */
export function singlePhaseFeed(ratedPower_W: number, poles: number | null): SinglePhaseFeed {
  const row = SINGLE_PHASE_FEED.find(({ upTo_W }) => ratedPower_W <= upTo_W * 1.001) ?? SINGLE_PHASE_FEED.at(-1)!;
  const [low, high] = row.share;
  const percent = (share: number) => Math.round(100 * share);
  const mayNotStart = (poles ?? 2) <= 2;
  const start = mayNotStart ? ' A two-pole motor like this one starts badly that way, or not at all.' : '';
  return {
    availableShare: [low, high],
    mayNotStart,
    text: `A three-phase motor on one phase gives ${percent(low)}–${percent(high)} % of its plate.${start} An inverter (one phase in, three out) made for the motor avoids both.`,
  };
}

const SINGLE_PHASE_FEED: readonly { upTo_W: number; share: readonly [number, number] }[] = [
  { upTo_W: 750, share: [0.6, 0.7] },
  { upTo_W: 2200, share: [0.4, 0.6] },
  { upTo_W: Infinity, share: [0.3, 0.5] },
];
