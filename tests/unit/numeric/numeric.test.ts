import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choleskyFactor, solveLower, solveUpper } from '../../../src/numeric/cholesky.ts';
import { normalDeviates } from '../../../src/numeric/deviates.ts';
import { shapePreservingCubic } from '../../../src/numeric/interpolate.ts';
import { normalQuantile } from '../../../src/numeric/normal.ts';
import { interval95, quantile } from '../../../src/numeric/quantile.ts';
import { bracketedRoot } from '../../../src/numeric/root.ts';

describe('shape-preserving cubic', () => {
  const points = [
    [0, 1],
    [1, 0.9],
    [2, 0.95],
    [4, 0.2],
    [5, 0],
  ] as const;

  it('goes through its points and keeps every dip and hump inside them', () => {
    const curve = shapePreservingCubic(points);
    for (const [x, y] of points) expect(curve.value(x)).toBeCloseTo(y, 12);
    for (let x = 0; x <= 1; x += 0.05) expect(curve.value(x)).toBeGreaterThanOrEqual(0.9 - 1e-12);
    for (let x = 1; x <= 2; x += 0.05) expect(curve.value(x)).toBeLessThanOrEqual(0.95 + 1e-12);
  });

  it('has the slope that small differences show', () => {
    const curve = shapePreservingCubic(points);
    for (const x of [0.3, 1.4, 2.7, 4.6]) {
      expect(curve.slope(x)).toBeCloseTo((curve.value(x + 1e-6) - curve.value(x - 1e-6)) / 2e-6, 6);
    }
  });

  it('is exact for straight lines, beyond the ends too', () => {
    const line = shapePreservingCubic([0, 2, 3, 7].map((x) => [x, 3 - 2 * x] as const));
    for (const x of [-1, 0.5, 2.2, 6.9, 9]) expect(line.value(x)).toBeCloseTo(3 - 2 * x, 12);
  });

  it('comes within the square of the spacing of a smooth curve', () => {
    const f = (x: number) => 1 - x * x;
    const curve = shapePreservingCubic(Array.from({ length: 41 }, (_, i) => [i / 40, f(i / 40)] as const));
    for (let x = 0; x <= 1; x += 0.013) expect(Math.abs(curve.value(x) - f(x))).toBeLessThan(1.6e-4);
  });

  it('refuses points that do not rise', () => {
    expect(() =>
      shapePreservingCubic([
        [0, 1],
        [0, 2],
      ]),
    ).toThrow('points: expected rising x, received 0 after 0');
  });
});

describe('bracketed root', () => {
  it('finds roots of steep, flat and kinked functions', () => {
    expect(bracketedRoot((x) => x ** 3 - 2, 0, 2, 1e-12)).toBeCloseTo(Math.cbrt(2), 10);
    expect(bracketedRoot((x) => Math.tanh(50 * (x - 0.123)), 0, 1, 1e-12)).toBeCloseTo(0.123, 10);
    expect(bracketedRoot((x) => (x < 0.7 ? 1 : -1e6), 0, 1, 1e-9)).toBeCloseTo(0.7, 8);
  });

  it('names a bracket that brackets nothing', () => {
    expect(() => bracketedRoot((x) => x + 1, 0, 1, 1e-9)).toThrow('bracket: expected a sign change');
  });
});

describe('Cholesky factor', () => {
  it('solves random positive definite systems', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 16, maxLength: 16 }), (m) => {
        const n = 4;
        const a = new Float64Array(n * n);
        for (let i = 0; i < n; i++)
          for (let j = 0; j < n; j++) {
            a[i * n + j] = i === j ? 1 : 0;
            for (let k = 0; k < n; k++) a[i * n + j]! += m[i * n + k]! * m[j * n + k]!;
          }
        const l = choleskyFactor(a, n)!;
        const x = solveUpper(l, n, solveLower(l, n, Float64Array.of(1, 2, 3, 4)));
        for (let i = 0; i < n; i++) {
          let sum = 0;
          for (let j = 0; j < n; j++) sum += a[i * n + j]! * x[j]!;
          expect(sum).toBeCloseTo(i + 1, 8);
        }
      }),
    );
  });

  it('says when a matrix is not positive definite', () => {
    expect(choleskyFactor(Float64Array.of(1, 0, 2, 1), 2)).toBeNull();
  });
});

describe('normal deviates', () => {
  // Source: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 26.5 (quantiles of the normal curve).
  it.each([
    [0.5, 0],
    [0.9, 1.2815516],
    [0.975, 1.959964],
    [0.995, 2.5758293],
    [0.999, 3.0902323],
    [0.00001, -4.2648908],
  ])('quantile at %f is %f', (p, z) => expect(normalQuantile(p)).toBeCloseTo(z, 6));

  it('come the same twice, in mirrored pairs, with unit variance and no correlation', () => {
    const n = 1024;
    const dims = 35;
    const a = normalDeviates(n, dims, 7);
    expect(a).toEqual(normalDeviates(n, dims, 7));
    for (let j = 0; j < dims; j++) {
      let mean = 0;
      let square = 0;
      let cross = 0;
      for (let i = 0; i < n; i++) {
        mean += a[i * dims + j]! / n;
        square += a[i * dims + j]! ** 2 / n;
        cross += (a[i * dims + j]! * a[i * dims + ((j + 1) % dims)]!) / n;
      }
      expect(Math.abs(mean)).toBeLessThan(1e-12);
      expect(Math.abs(square - 1)).toBeLessThan(1e-9);
      expect(Math.abs(cross)).toBeLessThan(1e-9);
    }
  });
});

describe('quantiles', () => {
  it('lie between order statistics', () => {
    expect(quantile(Float64Array.of(5, 1, 4, 2, 3), 0.5)).toBe(3);
    expect(quantile(Float64Array.of(3, 5, 2, 1, 4), 0.1)).toBeCloseTo(1.4, 12);
  });

  it('are those of the sorted sample', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 1, maxLength: 40 }),
        fc.nat(1000),
        (list, m) => {
          const sorted = Float64Array.from(list).sort();
          const at = (m / 1000) * (sorted.length - 1);
          const i = Math.floor(at);
          const expected = sorted[i]! + (at - i) * ((sorted[i + 1] ?? sorted[i]!) - sorted[i]!);
          expect(quantile(Float64Array.from(list), m / 1000)).toBeCloseTo(expected, 10);
        },
      ),
    );
  });

  it('an interval always holds the best value', () => {
    expect(interval95(Float64Array.of(1, 2, 3), 9)).toEqual([expect.closeTo(1.05, 9), 9]);
  });
});
