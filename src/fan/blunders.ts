import type { FanEstimate } from './estimate.ts';
import type { ObservationCheck } from './fit.ts';
import { UNKNOWN } from './unknowns.ts';

/** What a fit says of its own evidence: rows that do not belong to the others, and a level no wheel of the family has. */
export type Suspicion = {
  /** observations far from where all others put them, the worst first: worth a second look, not yet a blunder */
  odd: ObservationCheck[];
  /** level of pressure in standard deviations of the family's [-], where it is beyond what chance does; else null */
  level: number | null;
  /** levels or fit so poor that a mistake in all rows is worth a try */
  doubtful: boolean;
  /** pressure at no flow over what the family's middle wheel of this size and speed makes [-] */
  pressureRatio: number;
};

/** Observations further off than this, in standard deviations, are worth a second look. Source: measured on invented finds. */
const ODD = 2.7;
/** Levels further off than this are odd. Source: feasibility figures. */
const ODD_LEVEL = 2.6;
/** Levels of pressure and flow further off than this, and half squared distances per observation above that, are worth a try. */
const DOUBTFUL = { pressureLevel: 2, flowLevel: 1.4, misfit: 2 };

/**
 * Looks a fit over for what may be a blunder. Each observation is foreseen from all others; the levels of pressure and flow are held
 * against what wheels of its family and size make, unless a chart stands in for the family.
 * Source: C. E. Rasmussen & C. K. I. Williams, Gaussian Processes for Machine Learning (2006) 5.4.2 (leaving one out).
 */
export function suspicionOf({ posterior, model }: FanEstimate): Suspicion {
  const odd = posterior.checks
    .filter(({ leftOut }) => Math.abs(leftOut) > ODD)
    .sort((a, b) => Math.abs(b.leftOut) - Math.abs(a.leftOut));
  const fromFamily = model.powerFromAir !== null && model.base.known.high === 0 && posterior.checks.length > 0;
  const pressureLevel = Math.abs(posterior.mode[UNKNOWN.pressureLevel]!);
  const flowLevel = Math.abs(posterior.mode[UNKNOWN.flowLevel]!);
  return {
    odd,
    level: fromFamily && pressureLevel > ODD_LEVEL ? posterior.mode[UNKNOWN.pressureLevel]! : null,
    doubtful:
      posterior.cost > DOUBTFUL.misfit * posterior.checks.length ||
      (fromFamily && (pressureLevel > DOUBTFUL.pressureLevel || flowLevel > DOUBTFUL.flowLevel)),
    pressureRatio: Math.exp(model.spread.pressureLevel * posterior.mode[UNKNOWN.pressureLevel]!),
  };
}

/** A level this near to the family's is one that most wheels have [standard deviations]. */
const USUAL_LEVEL = 2;

/** The level of pressure is one that wheels of the family have: true of a mistake put right, hardly of another one. */
export const levelSettled = ({ posterior }: FanEstimate): boolean =>
  Math.abs(posterior.mode[UNKNOWN.pressureLevel]!) < USUAL_LEVEL;

/** How much more readings of a kind scatter around their curve than their errors foresee; 1 where they do not [-]. */
export function scatterOf({ posterior }: FanEstimate, kind: ObservationCheck['kind'], but?: ObservationCheck): number {
  const own = posterior.checks.filter((c) => c.kind === kind && c !== but).map((c) => c.leftOut);
  return own.length < 3 ? 1 : Math.max(1, Math.sqrt(own.reduce((s, z) => s + z * z, 0) / own.length));
}
