import type { BaseCurve } from './base-curve.ts';
import type { ModelSpread } from './unknowns.ts';

/** What a fan curve is made of before any of its unknowns moves. */
export type ModelInput = {
  base: BaseCurve;
  spread: ModelSpread;
  /** outlet area [m2], null where nothing is known of it: static and total are then taken as equal */
  outletArea_m2: number | null;
  airDensity_kg_m3: number;
  /** power comes from the air power at the best point and its efficiency [-], where no chart printed it; null: it is printed */
  powerFromAir: { bestAt: number; efficiency: number } | null;
};

/** Values of the curve for one vector of deviates, ready to be asked at many flows. */
export type CurveAt = {
  total_Pa(flow_m3_s: number): number;
  static_Pa(flow_m3_s: number): number;
  shaftPower_W(flow_m3_s: number): number;
  /** flow scale of this draw: static free delivery [m3/s] */
  flowScale_m3_s: number;
};

/** The numbers of one curve, unpacked from its deviates. */
export type Unpacked = {
  topPressure_Pa: number;
  flowScale_m3_s: number;
  /** outlet velocity pressure at 1 m3/s [Pa] */
  outletFactor: number;
  shape: Float64Array;
  lowEnd: number;
  highEnd: number;
  power_W: number;
  tilt: number;
  powerShape: Float64Array;
};

/** At its best point a wheel still makes this share of its top pressure: keeps powers above nothing in the wildest draws. */
export const LEAST_PRESSURE_SHARE = 0.05;
/** Beyond this multiple of free delivery the power stands still, and it never sinks below this share of its scale. */
export const POWER_ENDS = 1.5;
export const LEAST_POWER_SHARE = 0.02;

/** How sharply a guessed shaft power is kept above the air power: the exponent of the mean that joins the two. */
const JOINED = 12;
/**
 * Share that the air power has in a guessed shaft power [-]: nothing at usual efficiencies, all of it where the guess would give
 * the air more than the shaft takes. Source: definition, power mean of the two.
 */
export const shareInside = (joined_W: number, air_W: number): number =>
  air_W <= 0 ? 0 : Math.min((air_W / joined_W) ** JOINED, 1);
/** A guessed shaft power [W] that never falls below the air power [W], without a kink. */
export function aboveAir(guess_W: number, air_W: number): number {
  if (air_W <= 0) return guess_W;
  const [less, more] = guess_W < air_W ? [guess_W, air_W] : [air_W, guess_W];
  const square = (less / more) ** 2;
  const ratio = square * square * square * square * square * square;
  // asked a hundred thousand times: two terms of the root's series are good to 1e-9 where the two are apart
  const root =
    ratio < SERIES_UP_TO
      ? 1 + (ratio / JOINED) * (1 - ((JOINED - 1) / (2 * JOINED)) * ratio)
      : (1 + ratio) ** (1 / JOINED);
  return more * root;
}

/** Below this the next term of (1 + r)^(1/12), 0.05·r³, no longer counts. */
const SERIES_UP_TO = 0.002;
