import { describe, expect, it } from 'vitest';
import { curveBand, drawFanCurves } from '../../../src/fan/draws.ts';
import { estimateFan, type FanEvidence } from '../../../src/fan/estimate.ts';
import { FAMILY } from '../../../src/fan/families.ts';
import type { PressureObservation } from '../../../src/fan/observation.ts';
import { chartDeviation } from '../../../src/fan/tolerance.ts';

const nothing: FanEvidence = {
  charts: [],
  pressures: [],
  powers: [],
  family: FAMILY.radial,
  familyLevel: null,
  outletArea_m2: 0.0314,
  outletAreaSd: 0,
  speedSd: 0.004,
  airDensity_kg_m3: 1.0,
  motorPowerAtWheel_W: null,
  testedUpTo_m3_s: null,
};
const parabola = (q: number) => 2000 * (1 - (q / 0.6) ** 2);
const chart = (level = 1, group = 'a') => ({
  kind: 'static' as const,
  pressure: Array.from({ length: 40 }, (_, i) => [(i / 39) * 0.6, level * parabola((i / 39) * 0.6)] as const),
  shaftPower: Array.from({ length: 40 }, (_, i) => [(i / 39) * 0.6, 700 + (2000 * i * 0.6) / 39] as const),
  deviation: chartDeviation('AN4'),
  group,
  speedDistance: 0,
  path: '/blower/evidence/0',
});
const reading = (flow: number, pressure: number): PressureObservation => ({
  kind: 'static',
  flow_m3_s: flow,
  pressure_Pa: pressure,
  shared: [
    { error: 'hole', flow_m3_s: 0.025 * flow, value: 0 },
    { error: 'tube', flow_m3_s: 0.004 * flow, value: 0.008 * pressure },
  ],
  own: [{ flow_m3_s: 0.002 * flow, value: 5 }],
  path: '',
});

describe('a fan curve out of evidence', () => {
  it('is the chart itself where there is only a chart', () => {
    const { best } = estimateFan({ ...nothing, charts: [chart()] })!;
    for (const q of [0, 0.11, 0.29, 0.47, 0.6]) {
      expect(Math.abs(best.static_Pa(q) - parabola(q))).toBeLessThan(1);
      expect(best.shaftPower_W(q)).toBeCloseTo(700 + 2000 * q, 6);
      expect(best.total_Pa(q)).toBeCloseTo(best.static_Pa(q) + 0.5 * (q / 0.0314) ** 2, 9);
    }
  });

  it('keeps the dip of a squirrel-cage chart', () => {
    const dip: [number, number][] = [
      [0, 400],
      [0.1, 380],
      [0.2, 360],
      [0.3, 375],
      [0.4, 390],
      [0.5, 350],
      [0.6, 250],
      [0.7, 0],
    ];
    const { best } = estimateFan({
      ...nothing,
      family: FAMILY['forward-curved'],
      charts: [{ ...chart(), pressure: dip, shaftPower: null }],
    })!;
    for (const [q, p] of dip) expect(best.static_Pa(q)).toBeCloseTo(p, 6);
  });

  it('does not move the centre for a tolerance, but widens the band to the 95 % limit of the grade', () => {
    const estimate = estimateFan({ ...nothing, charts: [chart()] })!;
    const band = curveBand(estimate, drawFanCurves(estimate, 1024));
    expect((band.high95_Pa[0]! - band.low95_Pa[0]!) / 2 / 2000).toBeGreaterThan(0.095);
    expect((band.high95_Pa[0]! - band.low95_Pa[0]!) / 2 / 2000).toBeLessThan(0.115);
  });

  it('lies between two charts of one grade that disagree, whichever comes first', () => {
    const a = estimateFan({ ...nothing, charts: [chart(1, 'a'), chart(1.06, 'b')] })!.best.static_Pa(0.2);
    const b = estimateFan({ ...nothing, charts: [chart(1.06, 'b'), chart(1, 'a')] })!.best.static_Pa(0.2);
    expect(b).toBeCloseTo(a, 6);
    expect(a / parabola(0.2)).toBeGreaterThan(1.015);
    expect(a / parabola(0.2)).toBeLessThan(1.045);
  });

  it('lets readings of the very blower outweigh the chart', () => {
    const rows = [0.1, 0.2, 0.3, 0.4].map((q) => reading(q, 0.9 * parabola(q)));
    const { best } = estimateFan({ ...nothing, charts: [chart()], pressures: rows })!;
    for (const q of [0.15, 0.25, 0.35])
      expect(Math.abs(best.static_Pa(q) / (0.9 * parabola(q)) - 1)).toBeLessThan(0.02);
  });

  it('finds the curve from five readings and doubts most where none was taken', () => {
    const estimate = estimateFan({
      ...nothing,
      familyLevel: { pressure_Pa: 1700, flow_m3_s: 0.5 },
      pressures: [0.05, 0.1, 0.15, 0.2, 0.25].map((q) => reading(q, parabola(q))),
    })!;
    const draws = drawFanCurves(estimate, 1024);
    const band = curveBand(estimate, draws);
    const width = (q: number) => {
      const i = band.flow_m3_s.findIndex((f) => f >= q);
      return band.high95_Pa[i]! - band.low95_Pa[i]!;
    };
    for (const q of [0.05, 0.12, 0.2])
      expect(Math.abs(estimate.best.static_Pa(q) / parabola(q) - 1)).toBeLessThan(0.02);
    expect(width(0.4)).toBeGreaterThan(3 * width(0.15));
  });

  it('does not let shared errors average away: a hundred rows with one tube keep the doubt of the tube', () => {
    const rows = Array.from({ length: 100 }, (_, i) => reading(0.05 + 0.003 * i, parabola(0.05 + 0.003 * i)));
    const estimate = estimateFan({ ...nothing, familyLevel: { pressure_Pa: 1900, flow_m3_s: 0.6 }, pressures: rows })!;
    const draws = drawFanCurves(estimate, 1024);
    const i = draws.flows_m3_s.findIndex((q) => q >= 0.1);
    const best = estimate.best.total_Pa(draws.flows_m3_s[i]!);
    let square = 0;
    for (let d = 0; d < draws.count; d++)
      square += (draws.total_Pa[d * draws.flows_m3_s.length + i]! / best - 1) ** 2 / draws.count;
    expect(Math.sqrt(square)).toBeGreaterThan(0.006);
  });

  it('has no curve without evidence, size or speed', () => {
    expect(estimateFan(nothing)).toBeNull();
  });

  it('never guesses less from the shaft than the air gets', () => {
    const estimate = estimateFan({ ...nothing, charts: [{ ...chart(), shaftPower: null }], motorPowerAtWheel_W: 100 })!;
    for (const q of [0.1, 0.3, 0.5])
      expect(estimate.best.shaftPower_W(q)).toBeGreaterThanOrEqual(q * estimate.best.total_Pa(q) - 1e-9);
  });
});
