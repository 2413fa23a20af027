import type { MotorAtSite, MotorSituation } from './at-site.ts';
import { motorAtSite } from './at-site.ts';
import { currentAtLowVoltage, drawnBy } from './current.ts';
import { mayStall } from './supply.ts';
import { terminalVoltage } from './terminals.ts';

/** What a motor carries. Fractions [-]; currents null where the mains feeds the motor in a way they say nothing about. */
export type MotorLoad = {
  /** at the motor's shaft, with drive loss [W] */
  shaftPower_W: number;
  /** shaft power ÷ (rated power × service factor) */
  loadFraction: number;
  /** 1 − load fraction */
  margin: number;
  /** line amps at the usual voltage */
  current_A: number | null;
  /** line amps at the lowest voltage; null where that is not known */
  currentAtLowestVoltage_A: number | null;
  /** current at the lowest voltage ÷ plate current, the limit being 1 */
  currentRatioAtLowestVoltage: number | null;
  /** the lowest voltage may leave too little torque to keep turning */
  mayStall: boolean;
  /** at the terminals behind the cable, in the plate's connection [V] */
  terminal_V: number;
  lowestTerminal_V: number | null;
};

/**
 * Load of a motor when the wheel takes `wheelShaftPower_W`.
 * Load fraction = wheel power ÷ drive efficiency ÷ (rated power × service factor); no service factor above 1,000 m, nor at the lowest
 * voltage. Derating by altitude and heat is not in the fraction: see `MotorAtSite.siteFactor`. On a single-phase feed amps are null.
 * Source: definition; currents by the circle-diagram model of `drawnBy`.
 * Throws RangeError for a negative or non-finite power.
 */
export function motorLoad(given: MotorSituation & { wheelShaftPower_W: number }): MotorLoad {
  return loadAt(motorAtSite(given), given.wheelShaftPower_W);
}

/**
 * The same for a motor prepared once with `motorAtSite`; source and limits as `motorLoad`.
 * @param driveEfficiency one draw of the drive's efficiency instead of its centre [-]
 */
export function loadAt(at: MotorAtSite, wheelShaftPower_W: number, driveEfficiency = at.drive.value): MotorLoad {
  const shaftPower_W = wheelShaftPower_W / driveEfficiency;
  const loadFraction = shaftPower_W / (at.ratedPower_W * at.serviceFactor);
  const { current, connection } = at;
  const usual_V = terminalVoltage(at, at.voltage_V, shaftPower_W);
  const lowest_V = at.lowestVoltage_V === null ? null : terminalVoltage(at, at.lowestVoltage_V, shaftPower_W);
  const load = {
    shaftPower_W,
    loadFraction,
    margin: 1 - loadFraction,
    terminal_V: usual_V,
    lowestTerminal_V: lowest_V,
  };
  const stalls =
    lowest_V !== null &&
    current.kind === 'induction' &&
    mayStall(shaftPower_W / current.ratedPower_W, lowest_V / current.voltage_V, at.plate.phases);
  if (connection.kind === 'single-phase-feed') {
    return {
      ...load,
      current_A: null,
      currentAtLowestVoltage_A: null,
      currentRatioAtLowestVoltage: null,
      mayStall: stalls,
    };
  }
  const usual = drawnBy(current, shaftPower_W, usual_V).current_A;
  const low = lowest_V === null ? null : currentAtLowVoltage(current, shaftPower_W, usual_V, lowest_V);
  return {
    ...load,
    current_A: usual * connection.currentFactor,
    currentAtLowestVoltage_A: low === null ? null : low * connection.currentFactor,
    currentRatioAtLowestVoltage: low === null ? null : low / current.ratedCurrent_A,
    mayStall: stalls,
  };
}
