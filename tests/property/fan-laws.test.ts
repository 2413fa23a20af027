import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scaleFanPoint } from '../../src/fan/laws.ts';
import type { FanPoint } from '../../src/fan/laws.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const state = fc.record({
  speed_rpm: number(200, 30_000),
  diameter_m: number(0.05, 2),
  airDensity_kg_m3: number(0.4, 1.6),
});
const point = fc.record({
  flow_m3_s: number(0.001, 10),
  pressure_Pa: number(1, 30_000),
  shaftPower_W: number(1, 50_000),
});

const close = (a: FanPoint, b: FanPoint) => {
  for (const key of ['flow_m3_s', 'pressure_Pa', 'shaftPower_W'] as const)
    expect(Math.abs(a[key]! / b[key]! - 1)).toBeLessThan(1e-12);
};
const efficiency = (p: FanPoint) => (p.flow_m3_s * p.pressure_Pa) / p.shaftPower_W!;

describe('fan laws', () => {
  it('compose: two steps are one', () => {
    fc.assert(
      fc.property(point, state, state, state, (p, a, b, c) =>
        close(scaleFanPoint(scaleFanPoint(p, a, b), b, c), scaleFanPoint(p, a, c)),
      ),
    );
  });

  it('go back to where they came from', () => {
    fc.assert(fc.property(point, state, state, (p, a, b) => close(scaleFanPoint(scaleFanPoint(p, a, b), b, a), p)));
  });

  it('leave efficiency alone', () => {
    fc.assert(
      fc.property(point, state, state, (p, a, b) => {
        expect(Math.abs(efficiency(scaleFanPoint(p, a, b)) / efficiency(p) - 1)).toBeLessThan(1e-12);
      }),
    );
  });
});
