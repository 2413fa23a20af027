import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawFanCurves } from '../../../src/fan/draws.ts';
import { estimateFan, type FanEvidence } from '../../../src/fan/estimate.ts';
import { FAMILY } from '../../../src/fan/families.ts';
import type { ErrorEffect, PressureObservation } from '../../../src/fan/observation.ts';

/** Readings along a curve that falls like 1 − x^m, with errors of stated sizes that are not made. */
const rows = fc
  .record({
    family: fc.constantFrom('radial', 'backward-curved', 'forward-curved', 'axial', 'unknown'),
    free: fc.double({ min: 0.2, max: 1.2, noNaN: true }),
    top: fc.double({ min: 400, max: 3000, noNaN: true }),
    steep: fc.double({ min: 1.6, max: 2.8, noNaN: true }),
    count: fc.integer({ min: 3, max: 8 }),
    reach: fc.double({ min: 0.5, max: 0.95, noNaN: true }),
    flowError: fc.double({ min: 0.01, max: 0.04, noNaN: true }),
    tubeError: fc.double({ min: 0.004, max: 0.02, noNaN: true }),
  })
  .map(({ family, free, top, steep, count, reach, flowError, tubeError }) => ({
    family: family as keyof typeof FAMILY,
    free,
    top,
    observations: Array.from({ length: count }, (_, i): PressureObservation => {
      const x = 0.1 + ((reach - 0.1) * i) / (count - 1);
      const pressure = top * (1 - x ** steep);
      return {
        kind: 'static',
        flow_m3_s: x * free,
        pressure_Pa: pressure,
        shared: [
          { error: 'flow', flow_m3_s: flowError * x * free, value: 0 },
          { error: 'tube', flow_m3_s: 0, value: tubeError * pressure },
        ],
        own: [{ flow_m3_s: 0.003 * x * free, value: 6 }],
        path: `/rows/${i}`,
      };
    }),
  }));

const evidenceOf = (
  { family, free, top }: { family: keyof typeof FAMILY; free: number; top: number },
  pressures: PressureObservation[],
): FanEvidence => ({
  charts: [],
  pressures,
  powers: [],
  family: FAMILY[family],
  familyLevel: { pressure_Pa: top, flow_m3_s: free },
  outletArea_m2: 1,
  outletAreaSd: 0,
  speedSd: 0.004,
  airDensity_kg_m3: 1.1,
  motorPowerAtWheel_W: null,
  testedUpTo_m3_s: null,
});

/** Root mean square doubt of the pressure over the measured flows [Pa]. */
function doubt(evidence: FanEvidence): number {
  const draws = drawFanCurves(estimateFan(evidence)!, 512);
  const width = draws.flows_m3_s.length;
  const measured = evidence.pressures.map((o) => o.flow_m3_s);
  const [from, to] = [Math.min(...measured), Math.max(...measured)];
  let square = 0;
  let places = 0;
  for (let i = 0; i < width; i++) {
    if (draws.flows_m3_s[i]! < from || draws.flows_m3_s[i]! > to) continue;
    const at = Array.from({ length: draws.count }, (_, d) => draws.total_Pa[d * width + i]!);
    const mean = at.reduce((a, b) => a + b) / at.length;
    square += at.reduce((s, v) => s + (v - mean) ** 2, 0) / at.length;
    places++;
  }
  return Math.sqrt(square / places);
}

const scaled = (o: PressureObservation, by: number): PressureObservation => {
  const times = <T extends ErrorEffect>(e: T): T => ({ ...e, flow_m3_s: by * e.flow_m3_s, value: by * e.value });
  return { ...o, shared: o.shared.map(times), own: o.own.map(times) };
};

describe('the band of a fan curve', () => {
  it('never narrows when instruments get worse', () => {
    fc.assert(
      fc.property(rows, fc.double({ min: 1.3, max: 3, noNaN: true }), (test, by) => {
        const before = doubt(evidenceOf(test, test.observations));
        const after = doubt(
          evidenceOf(
            test,
            test.observations.map((o) => scaled(o, by)),
          ),
        );
        // 512 draws know a standard deviation to 3 %
        expect(after).toBeGreaterThan(0.97 * before);
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });

  it('is the same whatever the order of the rows', () => {
    fc.assert(
      fc.property(rows, (test) => {
        const there = estimateFan(evidenceOf(test, test.observations))!;
        const back = estimateFan(evidenceOf(test, [...test.observations].reverse()))!;
        for (const x of [0, 0.2, 0.5, 0.8])
          expect(Math.abs(there.best.static_Pa(x * test.free) - back.best.static_Pa(x * test.free))).toBeLessThan(
            0.002 * test.top,
          );
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });

  it('is made of curves with one free delivery each', () => {
    fc.assert(
      fc.property(rows, (test) => {
        const draws = drawFanCurves(estimateFan(evidenceOf(test, test.observations.slice(0, 2)))!, 128);
        const width = draws.flows_m3_s.length;
        for (let d = 0; d < draws.count; d++) {
          let falls = 0;
          let above = true;
          for (let i = 0; i < width; i++) {
            const q = draws.flows_m3_s[i]!;
            const positive = draws.total_Pa[d * width + i]! > (1.1 / 2) * q * q;
            if (above && !positive) falls++;
            above = positive;
          }
          expect(falls).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 25, seed: 20261125 },
    );
  });
});
