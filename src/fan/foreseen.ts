import { solveLower } from '../numeric/cholesky.ts';
import type { FanEstimate } from './estimate.ts';
import type { PressureObservation } from './observation.ts';
import { comparison } from './residuals.ts';
import { CURVE_UNKNOWNS } from './unknowns.ts';

/** An observation against a curve that was fitted without it. */
export type Foreseen = {
  /** distance in standard deviations, the curve's own doubt included */
  off: number;
  /** ln of how likely the observation was, up to a constant */
  lnChance: number;
};

/**
 * How well a curve fitted to other observations foresees this one. Errors it shares with them count as far as they have shown.
 * Source: C. E. Rasmussen & C. K. I. Williams, Gaussian Processes for Machine Learning (2006) 5.4.2 (leaving one out), for a curve made
 * straight around its mode.
 */
export function foreseenBy({ model, posterior }: FanEstimate, observation: PressureObservation): Foreseen {
  const compare = comparison(model, [observation], [], []);
  const known = new Map(posterior.sharedErrors.map((name, i) => [name, CURVE_UNKNOWNS + i]));
  const placeOf = (i: number) => (i < CURVE_UNKNOWNS ? i : known.get(compare.sharedErrors[i - CURVE_UNKNOWNS]!));
  const z = Float64Array.from({ length: compare.unknowns }, (_, i) => {
    const place = placeOf(i);
    return place === undefined ? 0 : posterior.mode[place]!;
  });
  const r = new Float64Array(1);
  const sd = new Float64Array(1);
  const slopes = new Float64Array(compare.unknowns);
  compare.evaluate(z, r);
  compare.deviations(z, sd);
  compare.slopes(z, r, slopes);

  const felt = new Float64Array(posterior.dimensions);
  let variance = sd[0]! ** 2;
  slopes.forEach((slope, i) => {
    const place = placeOf(i);
    if (place === undefined) variance += slope * slope;
    else felt[place] = slope;
  });
  solveLower(posterior.precision, posterior.dimensions, felt);
  for (const share of felt) variance += share * share;
  return {
    off: Math.abs(r[0]!) / Math.sqrt(variance),
    lnChance: compare.lnPerPascal(z) - 0.5 * (r[0]! ** 2 / variance + Math.log(variance)),
  };
}
