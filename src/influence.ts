import type { FanCurve } from './assessment.ts';
import { candidateOf, placeWithoutDucts } from './blower-curve.ts';
import type { CurveRequest } from './job/check.ts';

/**
 * How well the pressure is known at one flow: half the width of the 95 % band over the curve itself [-], with everything there is,
 * and with this piece of evidence left out. null where no curve, or no pressure, is left.
 */
export type Influence = { together: number | null; without: number | null };

const DRAWS = 512;

/** What each piece of evidence of a blower does for its band at a flow, in the order of the evidence; the wheel is always there. */
export function influenceOfEvidence({ site, supply, blower }: CurveRequest, flow_m3_s: number): Influence[] {
  const { place } = placeWithoutDucts({ site, supply });
  const widthFrom = (evidence: typeof blower.evidence): number | null => {
    const { band } = candidateOf({ ...blower, evidence }, place, DRAWS);
    return band && relativeWidth(band, flow_m3_s);
  };
  const together = widthFrom(blower.evidence);
  return blower.evidence.map((_, left) => {
    const others = blower.evidence.filter((_, i) => i !== left);
    return { together, without: widthFrom(others.length > 0 ? others : [{ kind: 'wheel' }]) };
  });
}

/** Half the band over the pressure, straight between the points of the curve; null beyond them or at no pressure. */
function relativeWidth({ flow_m3_s: flows, totalPressure_Pa, low95_Pa, high95_Pa }: FanCurve, flow: number) {
  const next = flows.findIndex((q) => q >= flow);
  if (next < 1) return null;
  const share = (flow - flows[next - 1]!) / (flows[next]! - flows[next - 1]!);
  const at = (values: readonly number[]): number => values[next - 1]! + share * (values[next]! - values[next - 1]!);
  const pressure = at(totalPressure_Pa);
  return pressure > 0 ? (at(high95_Pa) - at(low95_Pa)) / 2 / pressure : null;
}
