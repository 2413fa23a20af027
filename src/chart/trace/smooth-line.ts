import { BAND, factorBand, solveBand } from '../grid/band-solve.ts';

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

const ROUNDS = 8;
/** Rounds of least absolute errors before outliers are put aside. */
const FIRST_BELIEF = 4;
/** Rounds in which the stiffness is chosen anew: at first, and when the outliers are known. */
const CHOOSING = new Set([0, 5]);

/**
 * Robust penalised B-spline through samples (t, y), each with a weight.
 * The penalty is on second differences, so a stretch without samples is bridged and continued straight.
 * @returns null where there are too few samples to say anything (fewer than four with weight)
 * Source: P. H. C. Eilers & B. D. Marx, Statistical Science 11 (1996) 89–121; robust weights: least absolute errors, then Tukey's biweight.
 */
export function fitSmoothLine(
  t: ArrayLike<number>,
  y: ArrayLike<number>,
  weight: ArrayLike<number>,
  options: Options,
): SmoothLine | null {
  const { from, to, intervals = 12, stiffness = [1e-5, 1e-4, 1e-3, 1e-2, 0.1, 1, 10], reach = 3 } = options;
  const n = intervals + 3;
  const used: number[] = [];
  for (let i = 0; i < t.length; i++) if (weight[i]! > 0 && t[i]! >= from && t[i]! <= to) used.push(i);
  if (used.length < 4) return null;
  const scale = intervals / (to - from);
  const basis = used.map((i) => basisAt((t[i]! - from) * scale, intervals));
  const samples: Samples = {
    basis,
    y: Float64Array.from(used, (i) => y[i]!),
    weight: Float64Array.from(used, (i) => weight[i]!),
    robust: new Float64Array(used.length).fill(1),
  };

  let fitted: Float64Array = new Float64Array(n);
  let chosen = stiffness;
  for (let round = 0; round < ROUNDS; round++) {
    const best = bestOf(CHOOSING.has(round) ? stiffness : chosen, samples, n);
    if (!best) return null;
    fitted = best.fitted;
    chosen = [best.lambda];
    const residuals = samples.y.map((v, k) => Math.abs(v - dot(fitted, basis[k]!)));
    const spread = 1.4826 * weightedMedian(residuals, samples.weight);
    if (round < FIRST_BELIEF) {
      // at first every sample has its say, the nearer the more: many samples off to one side must not drag the line
      const least = Math.max(0.2 * spread, 0.05 * reach);
      residuals.forEach((r, k) => (samples.robust[k] = least / Math.max(least, r)));
    } else {
      // then what lies beyond the believed width counts for nothing
      const width = Math.max(4.7 * spread, reach);
      residuals.forEach((r, k) => (samples.robust[k] = r < width ? (1 - (r / width) ** 2) ** 2 : 0));
    }
  }

  const evaluate = (at: number, derivative: 0 | 1) => {
    const inside = Math.min(to, Math.max(from, at));
    const x = (inside - from) * scale;
    const slope = dot(fitted, slopeAt(x, intervals)) * scale;
    return derivative ? slope : dot(fitted, basisAt(x, intervals)) + slope * (at - inside);
  };
  return { value: (at) => evaluate(at, 0), slope: (at) => evaluate(at, 1), ...quality(samples, fitted, reach) };
}

type Basis = { first: number; b: readonly [number, number, number, number] };
type Samples = { basis: Basis[]; y: Float64Array; weight: Float64Array; robust: Float64Array };

function quality({ basis, y, weight, robust }: Samples, fitted: Float64Array, reach: number) {
  let believed = 0;
  let all = 0;
  let sumSquares = 0;
  let sumRobust = 0;
  for (let k = 0; k < y.length; k++) {
    const r = y[k]! - dot(fitted, basis[k]!);
    all += weight[k]!;
    if (Math.abs(r) < reach) believed += weight[k]!;
    sumSquares += weight[k]! * robust[k]! * r * r;
    sumRobust += weight[k]! * robust[k]!;
  }
  return { residual: sumRobust > 0 ? Math.sqrt(sumSquares / sumRobust) : 0, believed: believed / all };
}

/** The four cubic B-splines that are not zero at x (in knot intervals from the first knot). */
export function basisAt(x: number, intervals: number): Basis {
  const first = Math.min(intervals - 1, Math.max(0, Math.floor(x)));
  const f = x - first;
  const g = 1 - f;
  const b = [g ** 3 / 6, (3 * f ** 3 - 6 * f * f + 4) / 6, (3 * g ** 3 - 6 * g * g + 4) / 6, f ** 3 / 6] as const;
  return { first, b };
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
function bestOf(stiffness: readonly number[], samples: Samples, n: number) {
  const { basis, y, weight, robust } = samples;
  const moments = new Float64Array(BAND * n);
  const right = new Float64Array(n);
  let total = 0;
  let believed = 0;
  for (let k = 0; k < y.length; k++) {
    const w = weight[k]! * robust[k]!;
    if (w === 0) continue;
    total += w;
    believed++;
    const { first, b } = basis[k]!;
    for (let p = 0; p < 4; p++) {
      right[first + p]! += w * b[p]! * y[k]!;
      for (let q = 0; q <= p; q++) moments[BAND * (first + p) + p - q]! += w * b[p]! * b[q]!;
    }
  }
  if (!(total > 0)) return null;
  let best: { fitted: Float64Array; lambda: number } | null = null;
  let bestScore = Infinity;
  for (const lambda of stiffness) {
    const l = moments.slice();
    for (let i = 0; i + 2 < n; i++)
      for (let p = 0; p < 3; p++)
        for (let q = 0; q <= p; q++) l[BAND * (i + p) + p - q]! += lambda * total * D2[p]! * D2[q]!;
    for (let i = 0; i < n; i++) l[BAND * i]! += 1e-9 * total;
    if (!factorBand(l, n)) continue;
    const fitted = solveBand(l, n, right.slice());
    if (stiffness.length === 1) return { fitted, lambda };
    let sum = 0;
    for (let k = 0; k < y.length; k++) sum += weight[k]! * robust[k]! * (y[k]! - dot(fitted, basis[k]!)) ** 2;
    // neighbouring samples share blur and print, so the fit's freedom counts a little more than once
    const freedom = 1 - Math.min(0.9, (1.4 * traceOfHat(l, moments, n)) / believed);
    const score = sum / (freedom * freedom);
    if (score < bestScore) {
      bestScore = score;
      best = { fitted, lambda };
    }
  }
  return best;
}

const D2 = [1, -2, 1];

/** trace of A⁻¹·M, A factored as l: how many numbers the fit really uses. */
function traceOfHat(l: Float64Array, moments: Float64Array, n: number): number {
  let trace = 0;
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    for (let i = Math.max(0, j - BAND + 1); i < Math.min(n, j + BAND); i++)
      column[i] = i >= j ? moments[BAND * i + i - j]! : moments[BAND * j + j - i]!;
    trace += solveBand(l, n, column)[j]!;
  }
  return trace;
}

function weightedMedian(values: Float64Array, weights: Float64Array): number {
  const order = Uint32Array.from(values, (_, i) => i).sort((a, b) => values[a]! - values[b]!);
  let half = 0;
  for (const w of weights) half += w / 2;
  for (const i of order) {
    half -= weights[i]!;
    if (half <= 0) return values[i]!;
  }
  return 0;
}
