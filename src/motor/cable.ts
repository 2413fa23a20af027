/** A run of cable from the board to the motor. */
export type Cable = {
  /** one way [m] */
  length_m: number;
  /** copper or aluminium of one conductor [mm2] */
  crossSection_mm2: number;
  metal?: 'copper' | 'aluminium' | null;
};

/** What a cable takes on the way. */
export type CableDrop = { drop_V: number; voltageAtMotor_V: number; dropFraction: number; heat_W: number };

/**
 * Voltage lost in a cable: b·(ρ·L/S·cos φ + λ·L·sin φ)·I, b = 2 on one phase or DC, √3 on three (line to line).
 * @param supply_V volts at the board [V]
 * @param current_A line current [A]
 * @param powerFactor of the motor [-]; 1 for DC
 * ρ is that of a warm cable, 0.0225 Ω·mm²/m copper, 0.036 aluminium (1.25 × the 20 °C value); λ 0.08 mΩ/m.
 * A start draws 5–8 times the running amps and loses as much more: check both. Which cable a law allows is for a licensed electrician.
 * Source: IEC 60364-5-52 annex G, recalled; grade memory.
 * Throws RangeError for a length, section or voltage that is not positive.
 */
export function cableDrop(
  cable: Cable,
  given: { supply_V: number; current_A: number; powerFactor: number; phases: 1 | 3 },
): CableDrop {
  const { length_m, crossSection_mm2 } = cable;
  if (!(length_m >= 0 && crossSection_mm2 > 0 && given.supply_V > 0)) {
    throw new RangeError(
      `cable: expected a length, a cross-section and volts, received ${length_m}, ${crossSection_mm2}, ${given.supply_V}`,
    );
  }
  const resistance = (RESISTIVITY[cable.metal ?? 'copper'] * length_m) / crossSection_mm2;
  const reactance = REACTANCE_OHM_M * length_m;
  const sine = Math.sqrt(Math.max(1 - given.powerFactor ** 2, 0));
  const perAmp = resistance * given.powerFactor + reactance * sine;
  const drop_V = Math.min((given.phases === 3 ? Math.sqrt(3) : 2) * perAmp * given.current_A, given.supply_V);
  return {
    drop_V,
    voltageAtMotor_V: given.supply_V - drop_V,
    dropFraction: drop_V / given.supply_V,
    heat_W: (given.phases === 3 ? 3 : 2) * resistance * given.current_A ** 2,
  };
}

/** Smallest cable sold [mm2] that keeps the drop within a share of the voltage; null where none of `CABLE_SIZES_mm2` does. Heat and fuses may ask for more. Source: `cableDrop`. */
export function smallestCable(
  run: Omit<Cable, 'crossSection_mm2'>,
  given: Parameters<typeof cableDrop>[1],
  mostDrop = 0.05,
): number | null {
  return (
    CABLE_SIZES_mm2.find(
      (crossSection_mm2) => cableDrop({ ...run, crossSection_mm2 }, given).dropFraction <= mostDrop,
    ) ?? null
  );
}

/** Cross-sections sold [mm2]. Source: IEC 60228. */
export const CABLE_SIZES_mm2 = [0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35] as const;

/** Resistivity of a warm conductor [Ω·mm²/m]. Source: IEC 60364-5-52 annex G. */
const RESISTIVITY = { copper: 0.0225, aluminium: 0.036 } as const;
/** Reactance of a cable [Ω/m]. Source: IEC 60364-5-52 annex G. */
const REACTANCE_OHM_M = 0.08e-3;

/**
 * Cross-section of an American wire gauge [mm2]: diameter 0.127·92^((36−n)/39) mm.
 * @param gauge 0..40; 00 and 000 are −1 and −2. Source: ASTM B258, definition. Check: 12 → 3.31 mm2.
 */
export function crossSectionOfAwg(gauge: number): number {
  return (Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2;
}

/**
 * Cross-section of a stranded cable named "3/22", "7/20": strands / British standard wire gauge [mm2].
 * @returns null where the name or gauge is not in the table. Source: British Standard Wire Gauge (1883), diameters exact by definition.
 */
export function crossSectionOfSwgCable(name: string): number | null {
  const match = /^\s*(\d{1,3})\s*\/\s*(\d{1,2})\s*$/.exec(name);
  const diameter_mm = match ? SWG_DIAMETER_mm[Number(match[2])] : undefined;
  if (!match || diameter_mm === undefined) return null;
  return Number(match[1]) * (Math.PI / 4) * diameter_mm ** 2;
}

/** British standard wire gauge → wire diameter [mm]. Source: Order in Council 1883 (inches × 25.4). */
const SWG_DIAMETER_mm: Readonly<Record<number, number>> = {
  14: 2.032,
  16: 1.6256,
  18: 1.2192,
  20: 0.9144,
  22: 0.7112,
  24: 0.5588,
  26: 0.4572,
  29: 0.3454,
  36: 0.193,
  44: 0.0813,
};
