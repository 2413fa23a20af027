import { describe, expect, it } from 'vitest';
import { curveBand, drawFanCurves } from '../../../src/fan/draws.ts';
import { estimateFan, type FanEvidence } from '../../../src/fan/estimate.ts';
import { FAMILY } from '../../../src/fan/families.ts';
import type { PressureObservation } from '../../../src/fan/observation.ts';
import { slipIn } from '../../../src/fan/slip.ts';
import { shapePreservingCubic } from '../../../src/numeric/interpolate.ts';

const shape = shapePreservingCubic(FAMILY.radial.staticShape);
const truth_Pa = (flow: number) => 2000 * shape.value(flow / 0.6);
const reading = (flow_m3_s: number, i: number, times = 1): PressureObservation => ({
  kind: 'static',
  flow_m3_s,
  pressure_Pa: times * truth_Pa(flow_m3_s),
  shared: [{ error: 'holes', flow_m3_s: 0.025 * flow_m3_s, value: 0 }],
  own: [{ flow_m3_s: 0.002 * flow_m3_s, value: 8 }],
  path: `/rows/${i}`,
});
const FLOWS = [0.1, 0.18, 0.26, 0.34, 0.42, 0.5];
const AREA_m2 = 0.03;
/** Six readings of a wheel, each multiplied by its share of the truth. */
const test = (...times: number[]): FanEvidence => ({
  charts: [],
  pressures: times.map((by, i) => reading(FLOWS[i]!, i, by)),
  powers: [],
  family: FAMILY.radial,
  familyLevel: { pressure_Pa: 1900, flow_m3_s: 0.62 },
  outletArea_m2: AREA_m2,
  outletAreaSd: 0,
  speedSd: 0.004,
  airDensity_kg_m3: 1.2,
  motorPowerAtWheel_W: null,
  testedUpTo_m3_s: 0.5,
});
const withSlip = (row: number, by: number) => test(...FLOWS.map((_, i) => (i === row ? by : 1)));

describe('a reading that no curve brings together with the others', () => {
  it.each([
    ['ten times too large', 10],
    ['a tenth', 0.1],
    ['one leg of the tube', 0.5],
  ])('is left out of a second curve, and the band spans both: %s', (_, by) => {
    for (const row of [1, 2, 3, 4]) {
      const estimate = estimateFan(withSlip(row, by))!;
      const { best } = estimate.withoutSlip!;
      for (const q of FLOWS) expect(Math.abs(best.static_Pa(q) / truth_Pa(q) - 1), `row ${row}`).toBeLessThan(0.03);
      const band = curveBand(estimate, drawFanCurves(estimate, 256));
      band.flow_m3_s.forEach((q, i) => {
        if (q < FLOWS[0]! || q > FLOWS.at(-1)!) return;
        const total_Pa = truth_Pa(q) + 0.6 * (q / AREA_m2) ** 2;
        expect(band.low95_Pa[i], `row ${row} at ${q}`).toBeLessThan(total_Pa);
        expect(band.high95_Pa[i], `row ${row} at ${q}`).toBeGreaterThan(total_Pa);
      });
    }
  });

  it('is none among scatter of the size foreseen', () =>
    expect(estimateFan(test(1.01, 0.99, 1.004, 0.996, 1.01, 0.98))!.withoutSlip).toBeNull());

  it('is none where four readings are too few to tell which it is', () =>
    expect(estimateFan(test(1, 1, 0.5, 1))!.withoutSlip).toBeNull());

  it('is none where readings contradict each other whichever one leaves out', () => {
    const odd = (path: string) => ({ path, kind: 'pressure' as const, misfit: 500, leftOut: 20 });
    const rows = ['/rows/0', '/rows/1', '/rows/2', '/rows/3', '/rows/4'];
    const rest = (path: string) => ({ cost: 100, checks: rows.filter((r) => r !== path).map(odd) });
    expect(slipIn(rows.map(odd), rest)).toBeNull();
  });
});
