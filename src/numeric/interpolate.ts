/** A smooth curve through points: value and slope at any place. */
export type Interpolant = {
  /** smallest and largest x of the points it was made from */
  min: number;
  max: number;
  value(x: number): number;
  slope(x: number): number;
};

/**
 * Shape-preserving cubic through points (monotone between any two of them, so no dip is filled and none invented).
 * Beyond the first and last point it goes on straight with the end slope.
 * @param points `[x, y]`, at least two, x strictly rising
 * Source: F. N. Fritsch & J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300–304; end slopes three-point, limited
 * as in C. Moler, Numerical Computing with MATLAB (2004) ch. 3.
 */
export function shapePreservingCubic(points: readonly (readonly [number, number])[]): Interpolant {
  const n = points.length;
  if (n < 2) throw new RangeError(`points: expected at least two, received ${n}`);
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  points.forEach(([px, py], i) => {
    if (i > 0 && !(px > x[i - 1]!)) throw new RangeError(`points: expected rising x, received ${px} after ${x[i - 1]}`);
    x[i] = px;
    y[i] = py;
  });
  const slopes = fritschButlandSlopes(x, y);

  const interval = (at: number) => {
    let low = 0;
    let high = n - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (x[middle]! > at) high = middle;
      else low = middle;
    }
    return low;
  };

  return {
    min: x[0]!,
    max: x[n - 1]!,
    value(at) {
      if (at <= x[0]!) return y[0]! + slopes[0]! * (at - x[0]!);
      if (at >= x[n - 1]!) return y[n - 1]! + slopes[n - 1]! * (at - x[n - 1]!);
      const i = interval(at);
      const h = x[i + 1]! - x[i]!;
      const t = (at - x[i]!) / h;
      const s = 1 - t;
      return (
        s * s * (1 + 2 * t) * y[i]! +
        t * t * (3 - 2 * t) * y[i + 1]! +
        h * t * s * (s * slopes[i]! - t * slopes[i + 1]!)
      );
    },
    slope(at) {
      if (at <= x[0]!) return slopes[0]!;
      if (at >= x[n - 1]!) return slopes[n - 1]!;
      const i = interval(at);
      const h = x[i + 1]! - x[i]!;
      const t = (at - x[i]!) / h;
      const secant = (y[i + 1]! - y[i]!) / h;
      return 6 * t * (1 - t) * secant + (1 - t) * (1 - 3 * t) * slopes[i]! + t * (3 * t - 2) * slopes[i + 1]!;
    },
  };
}

function fritschButlandSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length;
  const h = new Float64Array(n - 1);
  const secant = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    h[i] = x[i + 1]! - x[i]!;
    secant[i] = (y[i + 1]! - y[i]!) / h[i]!;
  }
  const slopes = new Float64Array(n);
  if (n === 2) return slopes.fill(secant[0]!);
  for (let i = 1; i < n - 1; i++) {
    const before = secant[i - 1]!;
    const after = secant[i]!;
    if (before * after <= 0) continue;
    const w1 = 2 * h[i]! + h[i - 1]!;
    const w2 = h[i]! + 2 * h[i - 1]!;
    slopes[i] = (w1 + w2) / (w1 / before + w2 / after);
  }
  slopes[0] = endSlope(h[0]!, h[1]!, secant[0]!, secant[1]!);
  slopes[n - 1] = endSlope(h[n - 2]!, h[n - 3]!, secant[n - 2]!, secant[n - 3]!);
  return slopes;
}

function endSlope(h0: number, h1: number, secant0: number, secant1: number): number {
  const slope = ((2 * h0 + h1) * secant0 - h0 * secant1) / (h0 + h1);
  if (slope * secant0 <= 0) return 0;
  if (secant0 * secant1 < 0 && Math.abs(slope) > 3 * Math.abs(secant0)) return 3 * secant0;
  return slope;
}

/**
 * The same curve read off an even table by straight lines: quick where it is asked a hundred thousand times.
 * Beyond the table it goes on straight. Error: spacing² / 8 × curvature; 1,024 steps over 0..2 by default.
 */
export function tabulated(curve: Interpolant, low = 0, high = 2, steps = 1024): Interpolant {
  const values = Float64Array.from({ length: steps + 1 }, (_, i) => curve.value(low + ((high - low) * i) / steps));
  const perUnit = steps / (high - low);
  const cell = (x: number) => Math.min(Math.max(Math.floor((x - low) * perUnit), 0), steps - 1);
  return {
    min: curve.min,
    max: curve.max,
    value(x) {
      const i = cell(x);
      return values[i]! + ((x - low) * perUnit - i) * (values[i + 1]! - values[i]!);
    },
    slope(x) {
      const i = cell(x);
      return (values[i + 1]! - values[i]!) * perUnit;
    },
  };
}
