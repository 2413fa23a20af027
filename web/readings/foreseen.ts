import type { Assessment, FanCurve } from '../../src/assessment.ts';
import type { ReadingsEvidence } from '../../src/job/types.ts';
import { cutPlan, testAir, type CutPlan, type Cutting, type ForeseenCurve } from '../../src/readings/index.ts';

/**
 * The plan of a test from what is known before it: the blower's curve out of its other evidence, or its family, and the flows at
 * which this shop would run it. null while there is no curve or the rig is not told.
 */
export function foreseenPlan(
  assessment: Assessment,
  {
    blowerId,
    evidence,
    path,
    cutting,
  }: { blowerId: string; evidence: ReadingsEvidence; path: string; cutting: Cutting },
): CutPlan | null {
  const cases = assessment.cases.filter((c) => c.blowerId === blowerId);
  const fan = cases.find((c) => c.fanCurve.flow_m3_s.length > 1)?.fanCurve;
  if (!fan) return null;
  const { air } = testAir(evidence, assessment.air, path);
  const heavier = air.density_kg_m3 / assessment.air.density_kg_m3;
  const outlet = evidence.rig.side === 'outlet';
  return cutPlan({
    rig: evidence.rig,
    air,
    curve: curveThrough(fan, outlet ? fan.totalPressure_Pa : fan.staticPressure_Pa, heavier),
    shopFlows_m3_s: cases.flatMap((c) => (c.operatingPoint ? [c.operatingPoint.flow_m3_s] : [])),
    highestPressure_Pa: heavier * (fan.high95_Pa[0] ?? 0),
    cutting,
  });
}

/** A fan curve as the plan wants it: straight between its points, falling on below zero beyond the last. */
export function curveThrough(
  { flow_m3_s: flows }: FanCurve,
  pressures: readonly number[],
  factor: number,
): ForeseenCurve {
  const last = flows.length - 1;
  const at = (i: number): number => factor * pressures[i]!;
  const between = (i: number, flow: number): number =>
    at(i) + ((at(i + 1) - at(i)) * (flow - flows[i]!)) / (flows[i + 1]! - flows[i]!);
  const fall = Math.max((at(0) + 1) / flows[last]!, (at(last - 1) - at(last)) / (flows[last]! - flows[last - 1]!));
  const pressure_Pa = (flow: number): number => {
    if (flow >= flows[last]!) return at(last) - fall * (flow - flows[last]!);
    const i = flows.findIndex((_, k) => k < last && flow < flows[k + 1]!);
    return between(i, flow);
  };
  const end = pressures.findIndex((p, i) => i > 0 && p <= 0);
  const freeFlow_m3_s =
    end === -1
      ? flows[last]! + Math.max(0, at(last)) / fall
      : flows[end - 1]! + ((flows[end]! - flows[end - 1]!) * at(end - 1)) / (at(end - 1) - at(end));
  return { pressure_Pa, freeFlow_m3_s };
}
