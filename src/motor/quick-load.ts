/**
 * Quick estimates of motor load from published practice, kept beside the circle-diagram model as a second opinion that a person can
 * check on paper. Loads are shares of rated power [-].
 */

/** Load from amps in proportion, I/I_r·V/V_r: only above half load, because idle amps are left out. Source: US DOE fact sheet on motor load. */
export function loadFromCurrent(given: { current_A: number; ratedCurrent_A: number; voltageRatio?: number }): number {
  return (given.current_A / given.ratedCurrent_A) * (given.voltageRatio ?? 1);
}

/**
 * Load from amps with the idle amps taken off, two ways that bracket the truth: straight (I − I₀)/(I_r − I₀), and by the root of squares
 * √((I² − I₀²)/(I_r² − I₀²)). Below idle amps 0. Source: magnetising current at a right angle to load current (arithmetic).
 * Throws RangeError where idle amps are not below rated amps.
 */
export function loadFromCurrentAndIdle(given: { current_A: number; ratedCurrent_A: number; idleCurrent_A: number }): {
  linear: number;
  root: number;
} {
  const { current_A: I, ratedCurrent_A: rated, idleCurrent_A: idle } = given;
  if (!(idle < rated)) throw new RangeError(`idleCurrent_A: expected below ${rated}, received ${idle}`);
  return {
    linear: Math.max((I - idle) / (rated - idle), 0),
    root: Math.sqrt(Math.max((I * I - idle * idle) / (rated * rated - idle * idle), 0)),
  };
}

/** Load from watts drawn at the efficiency of full load: a little high at part load. Source: US DOE fact sheet on motor load. */
export function loadFromInput(given: { inputPower_W: number; ratedPower_W: number; efficiency: number }): number {
  return (given.inputPower_W * given.efficiency) / given.ratedPower_W;
}
