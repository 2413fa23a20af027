import { choleskyFactor, solveLower, solveUpper } from '../numeric/cholesky.ts';

/** A smooth function of one variable fitted to scattered samples. */
export type SmoothLine = {
  /** goes on straight beyond the samples */
  value(t: number): number;
  slope(t: number): number;
  /** root mean square of the residuals of the samples that were believed */
  residual: number;
  /** share of the samples' weight that was believed, 0..1 */
  believed: number;
};

type Options = {
  /** first and last t of the knots */
  from: number;
  to: number;
  /** number of knot intervals @default 12 */
  intervals?: number;
  /** stiffnesses to choose from by generalised cross-validation @default 1e-5..10 */
  stiffness?: readonly number[];
  /** a residual beyond this many units is not believed at all @default 3 */
  reach?: number;
};

/**
 * Robust penalised B-spline through samples (t, y), each with a weight.
 * The penalty is on second differences, so a stretch without samples is bridged and continued straight.
 * @returns null where there are too few samples to say anything (fewer than four with weight)
 * Source: P. H. C. Eilers & B. D. Marx, Statistical Science 11 (1996) 89–121; robust weights: Tukey's biweight.
 */
export function fitSmoothLine(
  t: ArrayLike<number>,
  y: ArrayLike<number>,
  weight: ArrayLike<number>,
  options: Options,
): SmoothLine | null {
  const { from, to, intervals = 12, stiffness = [1e-5, 1e-4, 1e-3, 1e-2, 0.1, 1, 10], reach = 3 } = options;
  const n = intervals + 3;
  const samples: number[] = [];
  for (let i = 0; i < t.length; i++) if (weight[i]! > 0 && t[i]! >= from && t[i]! <= to) samples.push(i);
  if (samples.length < 4) return null;
  const scale = intervals / (to - from);
  const basis = samples.map((i) => basisAt((t[i]! - from) * scale, intervals));

  const robust = new Float64Array(samples.length).fill(1);
  let coefficients: Float64Array = new Float64Array(n);
  let width = Infinity;
  for (let round = 0; round < 8; round++) {
    const moments = new Float64Array(n * n);
    const right = new Float64Array(n);
    let total = 0;
    samples.forEach((i, k) => {
      const w = weight[i]! * robust[k]!;
      total += w;
      const { first, b } = basis[k]!;
      for (let p = 0; p < 4; p++) {
        right[first + p]! += w * b[p]! * y[i]!;
        for (let q = 0; q < 4; q++) moments[(first + p) * n + first + q]! += w * b[p]! * b[q]!;
      }
    });
    if (!(total > 0)) return null;
    const next = bestOf(stiffness, moments, right, n, total, samples, basis, y, weight, robust);
    if (!next) return null;
    coefficients = next;
    // the believed width shrinks to what the residuals show, never below the reach asked for at the end
    const residuals = samples.map((i, k) => Math.abs(y[i]! - dot(coefficients, basis[k]!)));
    const spread =
      1.4826 *
      weightedMedian(
        residuals,
        samples.map((i) => weight[i]!),
      );
    width = Math.max(4.7 * spread, reach * (round < 3 ? 4 - round : 1));
    residuals.forEach((r, k) => (robust[k] = r < width ? (1 - (r / width) ** 2) ** 2 : 0));
  }

  let believedWeight = 0;
  let sumSquares = 0;
  let all = 0;
  let sumRobust = 0;
  samples.forEach((i, k) => {
    const r = y[i]! - dot(coefficients, basis[k]!);
    all += weight[i]!;
    if (Math.abs(r) < reach) believedWeight += weight[i]!;
    sumSquares += weight[i]! * robust[k]! * r * r;
    sumRobust += weight[i]! * robust[k]!;
  });
  const evaluate = (at: number, derivative: 0 | 1) => {
    const x = (Math.min(to, Math.max(from, at)) - from) * scale;
    const value = dot(coefficients, basisAt(x, intervals));
    const slope = dot(coefficients, slopeAt(x, intervals)) * scale;
    return derivative ? slope : value + slope * (at - Math.min(to, Math.max(from, at)));
  };
  return {
    value: (at) => evaluate(at, 0),
    slope: (at) => evaluate(at, 1),
    residual: Math.sqrt(sumSquares / sumRobust),
    believed: believedWeight / all,
  };
}

type Basis = { first: number; b: [number, number, number, number] };

/** The four cubic B-splines that are not zero at x (in knot intervals from the first knot). */
export function basisAt(x: number, intervals: number): Basis {
  const first = Math.min(intervals - 1, Math.max(0, Math.floor(x)));
  const f = x - first;
  const g = 1 - f;
  return {
    first,
    b: [(g * g * g) / 6, (3 * f * f * f - 6 * f * f + 4) / 6, (3 * g * g * g - 6 * g * g + 4) / 6, (f * f * f) / 6],
  };
}

function slopeAt(x: number, intervals: number): Basis {
  const first = Math.min(intervals - 1, Math.max(0, Math.floor(x)));
  const f = x - first;
  const g = 1 - f;
  return { first, b: [-(g * g) / 2, (3 * f * f - 4 * f) / 2, -(3 * g * g - 4 * g) / 2, (f * f) / 2] };
}

const dot = (c: Float64Array, { first, b }: Basis) =>
  c[first]! * b[0] + c[first + 1]! * b[1] + c[first + 2]! * b[2] + c[first + 3]! * b[3];

/** Solves for every stiffness and keeps the one with the smallest generalised cross-validation score. */
function bestOf(
  stiffness: readonly number[],
  moments: Float64Array,
  right: Float64Array,
  n: number,
  total: number,
  samples: number[],
  basis: Basis[],
  y: ArrayLike<number>,
  weight: ArrayLike<number>,
  robust: Float64Array,
): Float64Array | null {
  let best: Float64Array | null = null;
  let bestScore = Infinity;
  for (const lambda of stiffness) {
    const a = moments.slice();
    for (let i = 0; i + 2 < n; i++)
      for (let p = 0; p < 3; p++)
        for (let q = 0; q < 3; q++) a[(i + p) * n + i + q]! += lambda * total * D2[p]! * D2[q]!;
    for (let i = 0; i < n; i++) a[i * n + i]! += 1e-9 * total;
    const l = choleskyFactor(a, n);
    if (!l) continue;
    const c = solveUpper(l, n, solveLower(l, n, right.slice()));
    if (stiffness.length === 1) return c;
    let sum = 0;
    let used = 0;
    samples.forEach((i, k) => {
      const r = y[i]! - dot(c, basis[k]!);
      sum += weight[i]! * robust[k]! * r * r;
      if (robust[k]! > 0) used++;
    });
    const freedom = 1 - Math.min(0.9, (1.4 * traceOfHat(l, moments, n)) / Math.max(1, used));
    const score = sum / (freedom * freedom);
    if (score < bestScore) {
      bestScore = score;
      best = c;
    }
  }
  return best;
}

const D2 = [1, -2, 1];

/** trace of (L·Lᵀ)⁻¹·M: how many numbers the fit really uses. */
function traceOfHat(l: Float64Array, moments: Float64Array, n: number): number {
  let trace = 0;
  for (let j = 0; j < n; j++) {
    const column = new Float64Array(n);
    for (let i = 0; i < n; i++) column[i] = moments[i * n + j]!;
    trace += solveUpper(l, n, solveLower(l, n, column))[j]!;
  }
  return trace;
}

function weightedMedian(values: number[], weights: number[]): number {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  let half = weights.reduce((s, w) => s + w, 0) / 2;
  for (const i of order) {
    half -= weights[i]!;
    if (half <= 0) return values[i]!;
  }
  return 0;
}
