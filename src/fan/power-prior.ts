import type { FamilyShape } from './families.ts';
import type { CurveAt } from './model.ts';
import type { PseudoObservation } from './residuals.ts';

/** Best total efficiency of a small-shop wheel against the handbook's peak, and how surely. Source: feasibility figures. */
export const EFFICIENCY = { ofPeak: 0.93, sd: 0.16 };
/** Doubt of the family's power shape: tilt towards shut-off and waves. Source: feasibility figures (estimated). */
export const POWER_SHAPE = { tilt: 0.25, wave: 0.08 };
/** Motors are chosen to run at about three quarters load. Source: US DOE, motors are meant for 50–100 % (from memory). */
const TYPICAL_LOAD = { fraction: 0.75, sd: 0.35 };

/** Efficiency expected at `bestAt` [-], such that the best one along the curve is a small-shop wheel's. Source: definition. */
export const likelyEfficiency = (family: FamilyShape): number =>
  (EFFICIENCY.ofPeak * family.peakTotalEfficiency) / family.peakOverBest;

/**
 * What the motor's size says of the shaft power at the best point [W].
 * @param rated_W shaft power of the motor after the drive, null where it says nothing
 * @param chart   where the curve came from a chart: the hint is then about power alone and must not move the pressures, so the
 *   air power counts as the chart's
 */
export function motorSizeHint(rated_W: number | null, bestAt: number, chart: CurveAt | null): PseudoObservation[] {
  if (rated_W === null) return [];
  const airPower = (curve: CurveAt) => {
    const flow = bestAt * curve.flowScale_m3_s;
    return Math.max(flow * curve.total_Pa(flow), 1e-9);
  };
  return [
    (curve) => {
      const power = Math.max(curve.shaftPower_W(bestAt * curve.flowScale_m3_s), 1e-9);
      const seen = chart === null ? power : (power / airPower(curve)) * airPower(chart);
      return Math.log(seen / (TYPICAL_LOAD.fraction * rated_W)) / TYPICAL_LOAD.sd;
    },
  ];
}
