import { expect, it } from 'vitest';
import type { Readings } from '../../../src/readings/schema.ts';
import { FLOW_DOUBT } from '../../../src/readings/uncertainty.ts';
import { usualDoubts } from '../../../web/readings/usual-doubts.ts';

const readings: Readings = {
  kind: 'readings',
  rig: { method: 'orifice-cap', pipeDiameter_m: 0.15, tap: 'far' },
  rows: [
    { staticPressure_Pa: -2600, speed_rpm: 2800, current_A: 3 },
    { staticPressure_Pa: -2000, speed_rpm: 2900, current_A: 4 },
    { staticPressure_Pa: -1300, speed_rpm: 3000, current_A: 5 },
  ],
};

it('the usual doubts stand at the middle reading, whatever somebody has told instead', () => {
  const usual = usualDoubts(readings);
  // 0.25 % of 2900 rpm, 0.5 % of 4 A, the cap's own doubt of the air
  expect(usual.speed_rpm).toBeCloseTo(7.25, 9);
  expect(usual.current_A).toBeCloseTo(0.02, 9);
  expect(usual.flowRelative).toBeCloseTo(FLOW_DOUBT['orifice-cap'].sd, 9);
  const told = { ...readings, rig: { ...readings.rig, uncertainty: { pressure_Pa: 50, flowRelative: 0.2 } } };
  expect(usualDoubts(told)).toEqual(usual);
});

it('a short pipe raises the usual doubt of the air', () => {
  const short = { ...readings, rig: { ...readings.rig, lengthToTap_m: 0.3 } };
  expect(usualDoubts(short).flowRelative).toBeGreaterThan(usualDoubts(readings).flowRelative);
});
