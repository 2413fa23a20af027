import type { ObservationCheck, Posterior } from './fit.ts';

/** A pressure this far from where all others put it, in standard deviations, is a slip: scatter does not reach that far. */
const SLIP = 6;
/** With fewer pressures than this nobody can tell which of them is wrong. */
const FEWEST = 5;
/** Rows that are tried as the slip: the wrong one of two that contradict each other need not look the worse. */
const MOST_TRIED = 3;

/**
 * Place of the one reading that no curve brings together with the others, where the others agree without it; else null.
 * One such reading drags the whole curve along and would leave its band as narrow as before.
 * @param checks  how each observation fits a curve through all of them
 * @param without a fit to everything but what stands at a place; null where there is none
 * Source: leaving one out, C. E. Rasmussen & C. K. I. Williams, Gaussian Processes for Machine Learning (2006) 5.4.2.
 */
export function slipIn(
  checks: readonly ObservationCheck[],
  without: (path: string) => Pick<Posterior, 'checks' | 'cost'> | null,
): string | null {
  const pressures = checks.filter((c) => c.kind === 'pressure');
  if (pressures.length < FEWEST) return null;
  const suspects = pressures.filter(isSlip).sort((a, b) => Math.abs(b.leftOut) - Math.abs(a.leftOut));
  let best: { path: string; cost: number } | null = null;
  for (const { path } of suspects.slice(0, MOST_TRIED)) {
    const rest = without(path);
    if (rest === null || rest.checks.some(isSlip)) continue;
    if (best === null || rest.cost < best.cost) best = { path, cost: rest.cost };
  }
  return best?.path ?? null;
}

const isSlip = ({ kind, leftOut }: ObservationCheck): boolean => kind === 'pressure' && Math.abs(leftOut) > SLIP;
