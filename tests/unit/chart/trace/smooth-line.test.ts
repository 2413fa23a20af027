import { expect, test } from 'vitest';
import { factorBand, solveBand } from '../../../../src/chart/grid/band-solve.ts';
import { fitSmoothLine } from '../../../../src/chart/trace/smooth-line.ts';
import { choleskyFactor, solveLower, solveUpper } from '../../../../src/numeric/cholesky.ts';

const t = Array.from({ length: 200 }, (_, i) => i);
const ones = t.map(() => 1);

test('a straight line stays straight, also beyond its samples', () => {
  const line = fitSmoothLine(
    t,
    t.map((v) => 3 + 0.2 * v),
    ones,
    { from: 0, to: 199 },
  )!;
  expect(line.value(50)).toBeCloseTo(13, 6);
  expect(line.value(230)).toBeCloseTo(49, 4);
  expect(line.slope(100)).toBeCloseTo(0.2, 6);
});

test('a quarter of wild samples does not move it', () => {
  const y = t.map((v) => Math.sin(v / 40) * 5 + (v % 4 === 0 ? 25 + (v % 7) : 0));
  const line = fitSmoothLine(t, y, ones, { from: 0, to: 199, reach: 1 })!;
  for (const at of [10, 77, 150]) expect(Math.abs(line.value(at) - 5 * Math.sin(at / 40))).toBeLessThan(0.1);
  expect(line.believed).toBeGreaterThan(0.7);
  expect(line.believed).toBeLessThan(0.8);
});

test('a stretch without samples is bridged smoothly', () => {
  const y = t.map((v) => (v - 100) ** 2 / 400);
  const weight = t.map((v) => (v > 80 && v < 120 ? 0 : 1));
  const line = fitSmoothLine(t, y, weight, { from: 0, to: 199 })!;
  expect(Math.abs(line.value(100))).toBeLessThan(0.5);
});

test('three samples say nothing', () => {
  expect(fitSmoothLine([0, 1, 2], [0, 1, 2], [1, 1, 1], { from: 0, to: 2 })).toBeNull();
});

test('the banded solver agrees with the full one', () => {
  const n = 9;
  const band = new Float64Array(4 * n);
  const full = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let d = 0; d <= Math.min(i, 3); d++) {
      const v = d === 0 ? 5 + i : 1 / (1 + d + i);
      band[4 * i + d] = v;
      full[i * n + i - d] = v;
      full[(i - d) * n + i] = v;
    }
  const b = Float64Array.from({ length: n }, (_, i) => Math.cos(i));
  const l = choleskyFactor(full, n)!;
  const expected = solveUpper(l, n, solveLower(l, n, b.slice()));
  expect(factorBand(band, n)).toBe(true);
  solveBand(band, n, b).forEach((v, i) => expect(v).toBeCloseTo(expected[i]!, 12));
});

test('a matrix that is not positive definite is refused', () => {
  expect(factorBand(Float64Array.from([-1, 0, 0, 0]), 1)).toBe(false);
});
