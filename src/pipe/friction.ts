/**
 * Pipe friction (Darcy–Weisbach convention, 4 × Fanning).
 *
 * Colebrook is solved for x = 1/√f: x = −2·log10(ε/D/3.7 + 2.51·x/Re), by Newton, one logarithm a step. The left and
 * right sides are so nearly linear in x that a start within a few percent needs one step; the tree solver keeps the x
 * of its last visit for that reason.
 * Source: C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133–156; laminar: Hagen–Poiseuille.
 */

/** Laminar up to here, after the job contract [-]. */
export const LAMINAR_END = 2000;
/** Colebrook from here on; between the two the curves are joined without a step or a kink [-]. */
export const TURBULENT_START = 4000;

/** 2/ln 10: log10 written with natural logarithms. */
const TWO_OVER_LN10 = 2 / Math.LN10;
/** Newton's error after a step is about 0.01·step², so a last step below this leaves f right to 1e-9. */
const LAST_STEP = 3e-4;

/**
 * x = 1/√f of Colebrook's equation [-].
 * @param roughTerm  ε/D/3.7 [-], 0..1
 * @param smoothTerm 2.51/Re [-], > 0
 * @param guess      any start above zero; a near one saves logarithms
 */
export function colebrookInverseRoot(roughTerm: number, smoothTerm: number, guess: number): number {
  let x = guess;
  for (let round = 0; round < 30; round++) {
    const argument = roughTerm + smoothTerm * x;
    const step = (x + TWO_OVER_LN10 * Math.log(argument)) / (1 + (TWO_OVER_LN10 * smoothTerm) / argument);
    x -= step;
    if (step < LAST_STEP && step > -LAST_STEP) return x;
    // A start far off can throw x below zero, where the logarithm ends.
    if (x < 0.1) x = 0.1;
  }
  return x;
}

/** d ln f / d ln Re of Colebrook's equation at its root x [-]; between −0.4 (smooth) and 0 (rough). */
export function colebrookReynoldsExponent(roughTerm: number, smoothTerm: number, x: number): number {
  const argument = roughTerm + smoothTerm * x;
  const pull = (TWO_OVER_LN10 * smoothTerm) / argument;
  return (-2 * pull) / (1 + pull);
}

/** d ln f / d ln ε of Colebrook's equation at its root x [-]; between 0 (smooth) and about 0.5 (very rough). */
export function colebrookRoughnessExponent(roughTerm: number, smoothTerm: number, x: number): number {
  const argument = roughTerm + smoothTerm * x;
  const pull = (TWO_OVER_LN10 * smoothTerm) / argument;
  return (2 * TWO_OVER_LN10 * roughTerm) / argument / x / (1 + pull);
}

/** Where the blend from laminar to turbulent ends: ln f and d ln f/d ln Re of Colebrook at Re 4000. */
export type BlendEnd = { logF: number; exponent: number };

/** End of the blend for one roughness; worked out once per pipe. */
export function blendEnd(roughTerm: number): BlendEnd {
  const smoothTerm = 2.51 / TURBULENT_START;
  const x = colebrookInverseRoot(roughTerm, smoothTerm, 5);
  return { logF: -2 * Math.log(x), exponent: colebrookReynoldsExponent(roughTerm, smoothTerm, x) };
}

const LOG_LAMINAR_END = Math.log(LAMINAR_END);
const BLEND_WIDTH = Math.log(TURBULENT_START / LAMINAR_END);
const BLEND_START_LOG_F = Math.log(64 / LAMINAR_END);

/**
 * Between laminar and turbulent there is no agreed value. A cubic in ln f against ln Re takes value and slope over from
 * both sides; its slope stays above −1, so the pressure loss (which goes with f·Re²) rises with the flow throughout.
 * @returns ln f and d ln f/d ln Re
 */
export function blendedFriction(reynolds: number, end: BlendEnd): { logF: number; exponent: number } {
  const t = (Math.log(reynolds) - LOG_LAMINAR_END) / BLEND_WIDTH;
  const rise = (end.logF - BLEND_START_LOG_F) / BLEND_WIDTH;
  const shape = t * t * (3 - 2 * t);
  const logF =
    BLEND_START_LOG_F + BLEND_WIDTH * (rise * shape - t * (1 - t) * (1 - t) + end.exponent * t * t * (t - 1));
  const exponent = rise * 6 * t * (1 - t) - (1 - t) * (1 - 3 * t) + end.exponent * t * (3 * t - 2);
  return { logF, exponent };
}

/**
 * Darcy friction factor of a round pipe [-].
 * @param reynolds          Reynolds number on the inside diameter [-], > 0
 * @param relativeRoughness roughness height / inside diameter [-], 0..1
 * @returns friction factor: 64/Re below Re 2000, Colebrook (to 1e-9) above 4000, blended without a step between
 * @throws RangeError for a number that is not finite, Re ≤ 0, or a roughness outside 0..1: a caller's mistake
 * Check: Re 1e5, ε/D 1e-4 → 0.018514.
 */
export function darcyFrictionFactor(reynolds: number, relativeRoughness: number): number {
  if (!(reynolds > 0 && reynolds < Infinity)) {
    throw new RangeError(`darcyFrictionFactor: reynolds must be finite and above 0, received ${reynolds}`);
  }
  if (!(relativeRoughness >= 0 && relativeRoughness <= 1)) {
    throw new RangeError(`darcyFrictionFactor: relativeRoughness must be within 0..1, received ${relativeRoughness}`);
  }
  if (reynolds <= LAMINAR_END) return 64 / reynolds;
  const roughTerm = relativeRoughness / 3.7;
  if (reynolds < TURBULENT_START) return Math.exp(blendedFriction(reynolds, blendEnd(roughTerm)).logF);
  const x = colebrookInverseRoot(roughTerm, 2.51 / reynolds, 7);
  return 1 / (x * x);
}

/** A straight round pipe: length and inside diameter [m], roughness height [m]. */
export type StraightPipe = { length_m: number; diameter_m: number; roughness_m: number };

/**
 * Pressure lost to friction in a straight round pipe, f·(L/D)·ρ/2·v² [Pa].
 * @param flow_m3_s flow [m3/s], ≥ 0; 0 loses nothing
 * @param air       density [kg/m3] and dynamic viscosity [Pa s]
 * @throws RangeError for a flow below zero or a pipe that cannot be
 */
export function straightPipeLoss(
  pipe: StraightPipe,
  flow_m3_s: number,
  air: { density_kg_m3: number; viscosity_Pa_s: number },
): number {
  if (!(flow_m3_s >= 0 && flow_m3_s < Infinity)) {
    throw new RangeError(`straightPipeLoss: flow_m3_s must be finite and not below 0, received ${flow_m3_s}`);
  }
  if (flow_m3_s === 0) return 0;
  const { length_m, diameter_m, roughness_m } = pipe;
  const velocity_m_s = flow_m3_s / ((Math.PI / 4) * diameter_m * diameter_m);
  const reynolds = (air.density_kg_m3 * velocity_m_s * diameter_m) / air.viscosity_Pa_s;
  const factor = darcyFrictionFactor(reynolds, roughness_m / diameter_m);
  return (factor * (length_m / diameter_m) * air.density_kg_m3 * velocity_m_s * velocity_m_s) / 2;
}
