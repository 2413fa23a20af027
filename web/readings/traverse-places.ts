import {
  circularTraverse,
  LOG_TCHEBYCHEFF_PER_SIDE,
  rectangularTraverse,
  type Rig,
  type TraverseRule,
} from '../../src/readings/index.ts';

/** Rules offered for a round pipe, the commonest first; a channel has the first only. */
export const ROUND_RULES = ['log-Tchebycheff', 'log-linear'] as const satisfies readonly TraverseRule[];
export type RoundRule = (typeof ROUND_RULES)[number];
/** Points a radius; ISO 3966 asks for three or more. */
export const PER_RADIUS = [3, 4, 5] as const;
/** Points across each side of a channel; ISO 3966 asks for five or more. */
const PER_SIDE = LOG_TCHEBYCHEFF_PER_SIDE.find((n) => n >= 5) ?? 5;

export type TraversePlaces = {
  round: boolean;
  /** the ways across: both diameters alike, or the width and then the height; marks from the inside of one wall [m], rising */
  ways: { size_m: number; marks_m: number[] }[];
  /** readings in all */
  count: number;
};

/** Where to hold the pitot tube or the vane wheel in this pipe; null where its width is not told or a hub fills its middle. */
export function traversePlaces(rig: Rig, rule: RoundRule, perRadius: number): TraversePlaces | null {
  if ((rig.hubDiameter_m ?? 0) > 0) return null;
  const across = (size_m: number, shares: readonly number[]) => ({ size_m, marks_m: shares.map((s) => s * size_m) });
  if (rig.pipeDiameter_m != null) {
    const way = across(rig.pipeDiameter_m, circularTraverse(rule, perRadius));
    return { round: true, ways: [way], count: 2 * way.marks_m.length };
  }
  if (rig.width_m == null || rig.height_m == null) return null;
  const shares = rectangularTraverse('log-Tchebycheff', PER_SIDE);
  return {
    round: false,
    ways: [across(rig.width_m, shares), across(rig.height_m, shares)],
    count: shares.length ** 2,
  };
}
