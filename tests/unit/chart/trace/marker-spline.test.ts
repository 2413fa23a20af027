import { describe, expect, test } from 'vitest';
import { doubtBetween, smoothThrough, type Place } from '../../../../src/chart/trace/marker-spline.ts';

/** A pressure curve with a dip, as a wheel that stalls has it, on a sheet 1000 px wide. */
const height = (x: number): number => 200 + 350 * (x / 1000) ** 2.2 + 60 * Math.exp(-(((x - 380) / 110) ** 2));
const at = (...xs: number[]): Place[] => xs.map((x): Place => [x, height(x)]);
const off = (curve: readonly Place[]): number =>
  Math.sqrt(curve.reduce((sum, [x, y]) => sum + (y - height(x)) ** 2, 0) / curve.length);

describe('a curve through test points', () => {
  test('goes through every one of them, to its ends', () => {
    const points = at(50, 240, 300, 480, 560, 730, 830, 900, 980);
    const curve = smoothThrough(points);
    for (const [x, y] of points) expect(Math.min(...curve.map(([a, b]) => Math.hypot(a - x, b - y)))).toBeLessThan(1.5);
    expect(curve[0]).toEqual(points[0]);
    expect(curve.at(-1)![0]).toBeCloseTo(980, 6);
  });

  test('does not swing out between points that stand unevenly', () => {
    // two near each other after a wide gap, as throttles happen to be set
    expect(off(smoothThrough(at(20, 250, 320, 500, 600, 780, 880, 940, 1000)))).toBeLessThan(0.01 * 800);
  });

  test('a straight row stays straight', () => {
    const row: Place[] = [10, 90, 130, 400, 420, 700].map((x) => [x, 100 + 0.5 * x]);
    for (const [x, y] of smoothThrough(row)) expect(y).toBeCloseTo(100 + 0.5 * x, 6);
    expect(doubtBetween(row)).toBeLessThan(1e-6);
  });
});

test('what may lie between test points is the less sure the fewer they are', () => {
  const many = at(...Array.from({ length: 25 }, (_, i) => 40 * i));
  const few = at(0, 200, 400, 600, 800, 1000);
  expect(doubtBetween(many)).toBeLessThan(0.2 * doubtBetween(few));
  expect(doubtBetween(few)).toBeGreaterThan(0.003 * 800);
});
