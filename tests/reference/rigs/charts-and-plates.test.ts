import { describe, expect, it } from 'vitest';
import { checkCurveRequest, curveOf } from '../../../src/index.ts';
import { judged } from './judged.ts';
import { randomFrom } from './random.ts';
import { holds, median, relativeWidth } from './tally.ts';
import { spinning, trueFan, type Spinning, type TrueFan } from './true-fan.ts';
import type { TrueFamily } from './true-wheels.ts';

const SPEED_rpm = 2400;
const SITE = { altitude_m: 1850, airTemperature_C: 24, relativeHumidity: 0.5 };
const CHART_AIR_kg_m3 = 1.2;

type Evidence = Record<string, unknown>;
function curve(fan: TrueFan, evidence: Evidence[]) {
  const request = checkCurveRequest({
    site: SITE,
    blower: {
      id: 'b1',
      wheel: { family: fan.family, diameter_m: fan.diameter_m },
      outletArea_m2: fan.outletArea_m2,
      drive: { kind: 'direct' },
      runSpeed_rpm: SPEED_rpm,
      motor: { kind: 'induction', ratedPower_W: 2200 },
      evidence,
    },
  });
  if (!request.ok) throw new Error(JSON.stringify(request.issues));
  return curveOf(request.value).curve;
}
const siteDensity = (fan: TrueFan, wheel: Spinning) => {
  const dense = curve(fan, [chartOf(wheel, 60)]);
  return (dense.staticPressure_Pa[0]! / wheel.static_Pa(0)) * CHART_AIR_kg_m3;
};
const chartOf = (wheel: Spinning, points: number): Evidence => ({
  kind: 'chart',
  speed_rpm: SPEED_rpm,
  airDensity_kg_m3: CHART_AIR_kg_m3,
  pressureKind: 'static',
  pressure: Array.from({ length: points }, (_, i) => {
    const flow = (i / (points - 1)) * wheel.freeFlow_m3_s;
    return [flow, Math.max(wheel.static_Pa(flow), 0)];
  }),
});
const wheels = (family: TrueFamily, count: number) =>
  Array.from({ length: count }, (_, i) => trueFan(family, randomFrom(41, i)));
const rated = (flow_m3_s: number, pressure_Pa: number): Evidence => ({
  kind: 'rated-point',
  flow_m3_s,
  pressure_Pa,
  pressureKind: 'static',
  speed_rpm: SPEED_rpm,
  airDensity_kg_m3: CHART_AIR_kg_m3,
});

describe('a dense chart', () => {
  it.each(['forward-curved', 'axial', 'backward-curved'] as const)(
    'is followed within 0.3 % of its top, dips and humps too: %s',
    (family) => {
      let dips = 0;
      for (const fan of wheels(family, 12)) {
        const wheel = spinning(fan, SPEED_rpm, CHART_AIR_kg_m3);
        const { flow_m3_s, staticPressure_Pa } = curve(fan, [chartOf(wheel, 60)]);
        const thinner = siteDensity(fan, wheel) / CHART_AIR_kg_m3;
        const inside = flow_m3_s
          .map((q, i) => [q, staticPressure_Pa[i]!] as const)
          .filter(([q]) => q <= wheel.freeFlow_m3_s);
        const top = Math.max(...inside.map(([q]) => wheel.static_Pa(q)));
        expect(inside.length).toBeGreaterThan(30);
        for (const [q, p] of inside) expect(Math.abs(p / thinner - wheel.static_Pa(q)) / top).toBeLessThan(0.003);
        if (inside.some(([, p], i) => i > 0 && p > 1.005 * inside[i - 1]![1])) dips++;
      }
      if (family !== 'backward-curved') expect(dips).toBeGreaterThan(2);
    },
  );
});

describe('a rated point and nothing else', () => {
  it('gives a band that says how little it knows: some at the point, hardly anything far from it', () => {
    for (const family of ['radial', 'backward-inclined', 'forward-curved'] as const)
      for (const fan of wheels(family, 8)) {
        const wheel = spinning(fan, SPEED_rpm, CHART_AIR_kg_m3);
        const flow = 0.5 * wheel.freeFlow_m3_s;
        const found = curve(fan, [rated(flow, wheel.static_Pa(flow))]);
        const unseen = curve(fan, [{ kind: 'wheel' }]);
        const width = (c: typeof found, k: number) => (c.high95_Pa[k]! - c.low95_Pa[k]!) / c.totalPressure_Pa[0]!;
        const here = found.flow_m3_s.findIndex((f) => f >= flow);
        const there = unseen.flow_m3_s.findIndex((f) => f >= flow);
        expect(width(found, here)).toBeGreaterThan(0.15);
        if (there >= 0) expect(width(found, here)).toBeLessThan(0.8 * width(unseen, there));
        expect(width(found, found.flow_m3_s.length - 1)).toBeGreaterThan(2 * width(found, here));
      }
  });

  it('holds the truth where ducts would meet it, and is wide there too', () => {
    const cases = Array.from({ length: 60 }, (_, i) => judged(1, 800_000 + i, { mix: 'rated' })).flatMap((all) =>
      all.slice(0, 1),
    );
    expect(cases.length).toBeGreaterThan(50);
    for (const q of ['flow', 'pressure'] as const) {
      const held = cases.filter((j) => holds(j, q)).length;
      expect(held / cases.length, `${q}: ${held} of ${cases.length}`).toBeGreaterThan(0.87);
      expect(median(cases.map((j) => relativeWidth(j, q)))).toBeGreaterThan(0.2);
    }
  });
});

describe('a largest flow and a largest pressure', () => {
  it('are both ends of a curve, never one point of it', () => {
    for (const family of ['radial', 'backward-curved', 'forward-curved'] as const)
      for (const fan of wheels(family, 8)) {
        const wheel = spinning(fan, SPEED_rpm, CHART_AIR_kg_m3);
        const most = { pressure_Pa: wheel.static_Pa(0), flow_m3_s: wheel.freeFlow_m3_s };
        const thinner = siteDensity(fan, wheel) / CHART_AIR_kg_m3;
        const at = (c: ReturnType<typeof curve>, q: number) => {
          const k = c.flow_m3_s.findIndex((f) => f >= q);
          return c.staticPressure_Pa[k < 0 ? c.staticPressure_Pa.length - 1 : k]! / thinner / most.pressure_Pa;
        };
        const ends = curve(fan, [rated(most.flow_m3_s, 0), rated(0, most.pressure_Pa)]);
        expect(Math.abs(at(ends, 0) - 1)).toBeLessThan(0.1);
        expect(Math.abs(at(ends, most.flow_m3_s))).toBeLessThan(0.25);
        const mistaken = curve(fan, [rated(most.flow_m3_s, most.pressure_Pa)]);
        expect(at(mistaken, most.flow_m3_s)).toBeGreaterThan(0.5);
      }
  });
});
