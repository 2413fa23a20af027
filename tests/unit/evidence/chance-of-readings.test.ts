import { describe, expect, test } from 'vitest';
import { siteAir } from '../../../src/air/index.ts';
import { findBlunders } from '../../../src/evidence/blunders.ts';
import { gatherEvidence, type Place } from '../../../src/evidence/gather.ts';
import { estimateFan } from '../../../src/fan/estimate.ts';
import type { Blower, ReadingsEvidence } from '../../../src/job/types.ts';

const place: Place = {
  air: siteAir({ altitude_m: 0, airTemperature_C: 20, relativeHumidity: 0.5 }).air,
  supply: { voltage_V: 400, frequency_Hz: 50, phases: 3 },
  altitude_m: 0,
  ambient_C: 20,
  ductwork: null,
  path: '/blowers/0',
};
const blowerWith = (readings: ReadingsEvidence, runSpeed_rpm: number): Blower => ({
  id: 'b1',
  wheel: { family: 'radial', diameter_m: 0.4 },
  outletArea_m2: 0.03,
  drive: { kind: 'direct' },
  runSpeed_rpm,
  motor: { ratedPower_W: 2200 },
  evidence: [readings],
});

describe('how likely readings are', () => {
  const cap: ReadingsEvidence = {
    kind: 'readings',
    rig: { method: 'orifice-cap', pipeDiameter_m: 0.2, tap: 'far', sameDrive: false },
    rows: [
      [0.06, 1980],
      [0.09, 1900],
      [0.12, 1720],
      [0.14, 1490],
      [0.16, 1180],
    ].map(([orificeDiameter_m, p]) => ({ orificeDiameter_m, staticPressure_Pa: -p!, speed_rpm: 2400 })),
  };
  /** without the hint of a motor's size, which is about one speed alone */
  const lnEvidence = (runSpeed_rpm: number) => {
    const { evidence } = gatherEvidence(blowerWith(cap, runSpeed_rpm), place);
    return estimateFan({ ...evidence, motorPowerAtWheel_W: null }, false)!.posterior.lnEvidence;
  };

  test('does not hang on the speed at which their curve is drawn up', () => {
    for (const speed of [1600, 2900, 4000]) expect(lnEvidence(speed)).toBeCloseTo(lnEvidence(2400), 2);
  });
});

describe('looking for blunders', () => {
  test('gets by explanations that leave no pressure at all', () => {
    // millibars typed as pascals: read as anything smaller they are less than the air's own speed makes
    const tiny: ReadingsEvidence = {
      kind: 'readings',
      rig: { method: 'vane-traverse', pipeDiameter_m: 0.258, lengthToTap_m: 2.05, lengthTapToBlower_m: 0.27 },
      rows: [
        [27.7, 0, 3.99],
        [23.9, 18.1, 6.86],
        [23.9, 20.8, 7.22],
        [22.4, 25.8, 8.1],
        [21.4, 27.8, 8.56],
        [19.6, 32, 9.14],
        [16.9, 36.5, 10.08],
        [15.3, 39, 10.54],
      ].map(([p, v, current_A]) => ({ staticPressure_Pa: -p!, speed_rpm: 3350, velocities_m_s: [v!, v!], current_A })),
    };
    const blower: Blower = {
      ...blowerWith(tiny, 3350),
      wheel: { family: 'unknown', diameter_m: 0.413, inletDiameter_m: 0.288 },
      drive: { kind: 'belt', motorPulleyDiameter_m: 0.1, wheelPulleyDiameter_m: 0.088 },
      motor: { ratedPower_W: 5500, speed_rpm: 2925, voltage_V: 400, current_A: 10.6, phases: 3, frequency_Hz: 50 },
    };
    const estimate = estimateFan(gatherEvidence(blower, place).evidence)!;
    expect(findBlunders(blower, place, estimate)).toEqual([
      {
        code: 'unit-mixed',
        text: 'All pressures look too small, as if millibars were typed as pascals. Look at the unit the tube was read in, and type it with the number.',
        path: '/blowers/0/evidence/0/rows',
      },
    ]);
  });
});
