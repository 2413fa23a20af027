import { estimateFan, type FanEstimate, type FanEvidence } from './estimate.ts';
import type { ObservationCheck } from './fit.ts';
import { UNKNOWN } from './unknowns.ts';

/** What a fit says of its own evidence: rows that do not belong to the others, and a level no wheel of the family has. */
export type Suspicion = {
  /** observations far from where all others put them, the worst first: worth a second look, not yet a blunder */
  odd: ObservationCheck[];
  /** level of pressure in standard deviations of the family's [-], where it is beyond what chance does; else null */
  level: number | null;
};

/** Observations further off than this, in standard deviations, are worth a second look. Source: feasibility figures. */
const ODD = 3;
/** Levels further off than this are odd. Source: feasibility figures. */
const ODD_LEVEL = 2.8;

/**
 * Looks a fit over for what may be a blunder. Each observation is foreseen from all others; the level of pressure is held against
 * what wheels of its family and size make, unless a chart stands in for the family.
 * Source: C. E. Rasmussen & C. K. I. Williams, Gaussian Processes for Machine Learning (2006) 5.4.2 (leaving one out).
 */
export function suspicionOf({ posterior, model }: FanEstimate): Suspicion {
  const odd = posterior.checks
    .filter(({ leftOut }) => Math.abs(leftOut) > ODD)
    .sort((a, b) => Math.abs(b.leftOut) - Math.abs(a.leftOut));
  const level = posterior.mode[UNKNOWN.pressureLevel]!;
  const fromFamily = model.powerFromAir !== null && model.base.known.high === 0;
  return { odd, level: fromFamily && posterior.checks.length > 0 && Math.abs(level) > ODD_LEVEL ? level : null };
}

/** How much more the pressures scatter around their curve than their errors foresee; 1 where they do not [-]. */
export function scatterOf({ posterior }: FanEstimate): number {
  const own = posterior.checks.filter((c) => c.kind === 'pressure').map((c) => c.leftOut);
  return own.length < 3 ? 1 : Math.max(1, Math.sqrt(own.reduce((s, z) => s + z * z, 0) / own.length));
}

/** Rows this far from a curve through the others, in standard deviations as large as the others show them, do not belong to them. */
const STRANGER = 3.7;
const MOST_SUSPECTS = 3;

/**
 * The row that does not belong to the others, by leaving each suspect out and fitting anew: the fall of the cost names it more
 * surely than its own distance. The others' scatter counts: instruments are not always as good as they are taken for.
 * @returns pointer of the row, or null where none is a stranger
 */
export function strangerAmong(
  evidence: FanEvidence,
  estimate: FanEstimate,
  suspects: readonly ObservationCheck[],
): string | null {
  const tried = suspects.slice(0, MOST_SUSPECTS).flatMap(({ path }) => {
    const without = estimateFan({ ...evidence, pressures: evidence.pressures.filter((o) => o.path !== path) });
    if (without === null) return [];
    const fall = Math.max(estimate.posterior.cost - without.posterior.cost, 0);
    return [{ path, off: Math.sqrt(2 * fall) / scatterOf(without) }];
  });
  const worst = tried.sort((a, b) => b.off - a.off)[0];
  return worst && worst.off > STRANGER ? worst.path : null;
}
