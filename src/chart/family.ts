import type { CurveReading } from './reading.ts';

/** Curves of one chart begin and end alike: where one does not, a part of it may be missing. */
export type OddOne = { readonly curve: number; readonly end: 'first' | 'last'; readonly flow: number };

/**
 * Curves of the same quantity whose beginning is out of line with the others', as a share of their own last flow.
 * One wheel at several speeds, or several blade angles, is drawn from about the same share of its flow range on.
 * @returns what to look at; nothing for fewer than two curves
 */
export function oddBeginnings(curves: readonly CurveReading[]): OddOne[] {
  const odd: OddOne[] = [];
  for (const quantity of new Set(curves.map((c) => c.quantity))) {
    const family = curves
      .map((c, index) => ({ c, index }))
      .filter(({ c }) => c.quantity === quantity && c.points.length > 1);
    if (family.length < 2) continue;
    const shares = family.map(({ c }) => c.points[0]![0] / c.points.at(-1)![0]);
    const least = Math.min(...shares);
    family.forEach(({ c, index }, k) => {
      if (shares[k]! - least > FARTHEST_APART) odd.push({ curve: index, end: 'first', flow: c.points[0]![0] });
    });
  }
  return odd;
}

/** Printed families keep well within this of each other. */
const FARTHEST_APART = 0.25;
