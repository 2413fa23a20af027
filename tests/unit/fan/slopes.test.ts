import { describe, expect, it } from 'vitest';
import { baseFromChart, baseFromFamily } from '../../../src/fan/base-curve.ts';
import { FAMILY } from '../../../src/fan/families.ts';
import { CURVE_UNKNOWNS, curveModel, type CurveModel } from '../../../src/fan/model.ts';

const spread = {
  pressureLevel: 0.16,
  flowLevel: 0.4,
  outletArea: 0.3,
  speed: 0.02,
  shape: { sd: 0.1, length: 0.3 },
  beyond: 0.1,
  powerLevel: 0.16,
  powerTilt: 0.25,
  powerShape: 0.08,
};
const given = { spread, outletArea_m2: 0.03, airDensity_kg_m3: 1.1 };
const printed = baseFromChart(
  'total',
  Array.from({ length: 9 }, (_, i) => [0.05 + 0.04 * i, 2000 - 9000 * (0.05 + 0.04 * i) ** 2] as const),
  [
    [0.05, 400],
    [0.2, 700],
    [0.37, 1000],
  ],
  FAMILY.radial,
);
const models: Record<string, CurveModel> = {
  'a family': curveModel({
    ...given,
    base: baseFromFamily(FAMILY['forward-curved'], 900, 0.5),
    powerFromAir: { bestAt: 0.45, efficiency: 0.58 },
  }),
  'a family that would give the air more than the shaft takes': curveModel({
    ...given,
    base: baseFromFamily(FAMILY.radial, 900, 0.5),
    powerFromAir: { bestAt: 0.37, efficiency: 1.05 },
  }),
  'a chart with its ends unknown': curveModel({ ...given, base: printed, powerFromAir: null }),
};

describe.each(Object.entries(models))('slopes of %s', (_, model) => {
  const z = Float64Array.from({ length: CURVE_UNKNOWNS }, (__, i) => 0.8 * Math.sin(3 * i + 1));
  const step = 1e-5;
  const moved = (a: number, by: number) => model.curve(z.map((v, i) => (i === a ? v + by : v)));
  // 0.4 and 0.5 lie beyond the chart's last point, 0.7 beyond free delivery
  it.each([0.02, 0.11, 0.23, 0.31, 0.4, 0.5, 0.7])('are those that small steps show at %s m³/s', (flow) => {
    const cursor = model.cursor();
    cursor.load(z);
    const out = new Float64Array(CURVE_UNKNOWNS);
    const check = (read: (c: ReturnType<CurveModel['curve']>, q: number) => number, perFlow: number, scale: number) => {
      for (let a = 0; a < CURVE_UNKNOWNS; a++) {
        const seen = (read(moved(a, step), flow) - read(moved(a, -step), flow)) / (2 * step);
        expect(Math.abs(out[a]! - seen), `unknown ${a}`).toBeLessThan(1e-5 * scale);
      }
      const along = (read(model.curve(z), flow + 1e-6) - read(model.curve(z), flow - 1e-6)) / 2e-6;
      expect(Math.abs(perFlow - along)).toBeLessThan(1e-4 * (scale + Math.abs(along)));
    };
    check((c, q) => c.static_Pa(q), cursor.pressureSlopes('static', flow, out), 2000);
    check((c, q) => c.total_Pa(q), cursor.pressureSlopes('total', flow, out), 2000);
    check((c, q) => Math.log(c.shaftPower_W(q)), cursor.lnPowerSlopes(flow, out), 1);
  });
});
