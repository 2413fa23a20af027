import { placeOf } from '../judge.ts';
import type { Air } from '../air/index.ts';
import { wheelSpeed } from '../evidence/run-speed.ts';
import type { CurveBand, FanDraws } from '../fan/draws.ts';
import type { FanEstimate } from '../fan/estimate.ts';
import type { Job } from '../job/types.ts';
import { motorAtSite } from '../motor/index.ts';
import type { Candidate } from '../operate/candidate.ts';

/**
 * A blower after a change of pulleys or motor without fitting its curve anew: the curve as it was, carried to the new speed by the fan
 * laws. For looking around only; what is advised is judged from the evidence.
 * @param before the same blower unchanged
 * @param index  its place in the changed job
 */
export function quickCandidate(before: Candidate, changed: Job, air: Air, index: number): Candidate {
  const blower = changed.blowers[index]!;
  const { altitude_m, ambient_C, path } = placeOf(changed, air, index);
  const { supply } = changed;
  const motor = motorAtSite({
    motor: blower.motor,
    drive: blower.drive,
    cable: blower.cable,
    supply,
    altitude_m,
    ambient_C,
    path,
  });
  const { speed_rpm } = wheelSpeed(blower, supply, path);
  const ratio = speed_rpm === null || before.speed_rpm === null ? 1 : speed_rpm / before.speed_rpm;
  const moved = { ...before, blower, motor, speed_rpm };
  if (ratio === 1 || before.estimate === null || before.draws === null) return moved;
  return {
    ...moved,
    estimate: fasterEstimate(before.estimate, ratio),
    draws: fasterDraws(before.draws, ratio),
    band: before.band && fasterBand(before.band, ratio),
    bestOnNet_Pa: before.bestOnNet_Pa && before.bestOnNet_Pa.map((p) => p * ratio ** 2),
  };
}

function fasterEstimate(estimate: FanEstimate, r: number): FanEstimate {
  const { best, knots_m3_s, familyOnlyDeviation_Pa } = estimate;
  return {
    ...estimate,
    best: {
      total_Pa: (q) => r ** 2 * best.total_Pa(q / r),
      static_Pa: (q) => r ** 2 * best.static_Pa(q / r),
      shaftPower_W: (q) => r ** 3 * best.shaftPower_W(q / r),
      flowScale_m3_s: r * best.flowScale_m3_s,
    },
    knots_m3_s: knots_m3_s.map((q) => r * q),
    familyOnlyDeviation_Pa: (q) => r ** 2 * familyOnlyDeviation_Pa(q / r),
  };
}

const fasterDraws = (draws: FanDraws, r: number): FanDraws => ({
  ...draws,
  flows_m3_s: draws.flows_m3_s.map((q) => r * q),
  total_Pa: draws.total_Pa.map((p) => r ** 2 * p),
  shaftPower_W: draws.shaftPower_W.map((p) => r ** 3 * p),
});

function fasterBand(band: CurveBand, r: number): CurveBand {
  const times = (values: readonly number[], factor: number) => values.map((v) => v * factor);
  return {
    flow_m3_s: times(band.flow_m3_s, r),
    totalPressure_Pa: times(band.totalPressure_Pa, r ** 2),
    staticPressure_Pa: times(band.staticPressure_Pa, r ** 2),
    low95_Pa: times(band.low95_Pa, r ** 2),
    high95_Pa: times(band.high95_Pa, r ** 2),
    shaftPower_W: times(band.shaftPower_W, r ** 3),
    shaftPowerLow95_W: times(band.shaftPowerLow95_W, r ** 3),
    shaftPowerHigh95_W: times(band.shaftPowerHigh95_W, r ** 3),
  };
}
