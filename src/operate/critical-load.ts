import { bracketedRoot } from '../numeric/root.ts';

/** Beyond three times its rating no motor turns: the search stops there. */
const MOST_LOAD = 3;

/**
 * Load fraction at which the current at the lowest voltage reaches the plate's; 0 where it does so without load, Infinity where never or not known.
 * @param ratioAt current at the lowest voltage ÷ plate current by wheel power [W], null where not known
 * @param capacity_W wheel power at load fraction 1 [W]
 * Source: definition; the current rises with load.
 */
export function criticalLoad(ratioAt: (wheel_W: number) => number | null, capacity_W: number): number {
  const excess = (load: number) => (ratioAt(load * capacity_W) ?? 0) - 1;
  if (excess(0) > 0) return 0;
  return excess(MOST_LOAD) < 0 ? Infinity : bracketedRoot(excess, 0, MOST_LOAD, 1e-6);
}
