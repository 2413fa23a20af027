import type { FanEstimate } from './estimate.ts';
import type { ObservationCheck } from './fit.ts';
import { UNKNOWN } from './unknowns.ts';

/** What a fit says of its own evidence: rows that do not belong to the others, and a level no wheel of the family has. */
export type Suspicion = {
  /** observations far from where all others put them, the worst first: worth a second look, not yet a blunder */
  odd: ObservationCheck[];
  /** levels of pressure and of flow in standard deviations of the family's [-], where they are beyond what chance does; else null */
  level: number | null;
  flowLevel: number | null;
  /** pressure at no flow over what the family's middle wheel of this size and speed makes [-] */
  pressureRatio: number;
};

/** Observations further off than this, in standard deviations, are worth a second look. Source: measured on invented finds. */
const ODD = 2.7;
/** Levels further off than this are odd. Source: feasibility figures. */
const ODD_LEVEL = 2.8;
/** The level of flow is hardly foreseen, so what is odd of it is odd indeed. Source: measured on invented finds. */
const ODD_FLOW_LEVEL = 2;

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
  const beyond = (deviate: number, most: number) => (fromFamily && Math.abs(deviate) > most ? deviate : null);
  const level = posterior.mode[UNKNOWN.pressureLevel]!;
  return {
    odd,
    level: beyond(level, ODD_LEVEL),
    flowLevel: beyond(posterior.mode[UNKNOWN.flowLevel]!, ODD_FLOW_LEVEL),
    pressureRatio: Math.exp(model.spread.pressureLevel * level),
  };
}

/** How much more the pressures scatter around their curve than their errors foresee; 1 where they do not [-]. */
export function scatterOf({ posterior }: FanEstimate): number {
  const own = posterior.checks.filter((c) => c.kind === 'pressure').map((c) => c.leftOut);
  return own.length < 3 ? 1 : Math.max(1, Math.sqrt(own.reduce((s, z) => s + z * z, 0) / own.length));
}
