import { choleskyFactor, solveLower, solveUpper } from '../numeric/cholesky.ts';
import type { Comparison } from './residuals.ts';

/** A place where the unknowns and the observations agree best, and how sharply. */
export type Minimum = {
  z: Float64Array;
  residuals: Float64Array;
  /** standard deviations of the residuals there */
  sd: Float64Array;
  /** row-major residuals × unknowns */
  jacobian: Float64Array;
  /** lower triangle of the precision of the unknowns, and its Cholesky factor; a pinned one has precision 1 and no ties */
  normal: Float64Array;
  precision: Float64Array;
  /** half the squared distance from evidence and prior */
  cost: number;
  iterations: number;
};

const MOST_ITERATIONS = 30;
/** The standard deviations follow the slope of the curve for so many steps, then stand still, lest it all goes in circles. */
const FREEZE_AFTER = 4;
/** Steps below this share of a standard deviation change nothing anybody sees. */
const SMALL_STEP = 4e-3;
/** Along a ridge that is only tabulated, less will do. */
const SMALL_STEP_PINNED = 0.1;
/** Nor does a gain of likelihood as small as this, in ln. */
const SMALL_GAIN = 2e-3;
const LEAST_DAMPING = 1e-3;
const MOST_DAMPING = 1e6;

/**
 * Damped Gauss–Newton on whitened unknowns (a standard normal prior on each).
 * @param start  where to begin; not written to
 * @param pinned place of an unknown that stays as it starts, or null
 * Source: D. W. Marquardt, J. SIAM 11 (1963) 431–441.
 */
export function descend(compare: Comparison, start: Float64Array, pinned: number | null = null): Minimum {
  const { unknowns: n, residuals: m } = compare;
  let z: Float64Array = Float64Array.from(start);
  const sd = new Float64Array(m);
  let r = new Float64Array(m);
  let trial = new Float64Array(m);
  const jacobian = new Float64Array(m * n);
  const costOf = (at: Float64Array, res: Float64Array) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += at[i]! ** 2;
    for (let i = 0; i < m; i++) sum += (res[i]! / sd[i]!) ** 2;
    return 0.5 * sum;
  };

  compare.evaluate(z, r);
  let iterations = 0;
  let damping = 0;
  for (; iterations < MOST_ITERATIONS; iterations++) {
    if (iterations <= FREEZE_AFTER) compare.deviations(z, sd);
    compare.slopes(z, r, jacobian);
    const { normal, downhill } = normalEquations(jacobian, r, sd, z, pinned);
    const before = costOf(z, r);
    let taken: Float64Array | null = null;
    while (taken === null && damping <= MOST_DAMPING) {
      const step = solved(normal, downhill, damping, n);
      if (step !== null) {
        const next = z.map((v, a) => v + step[a]!);
        compare.evaluate(next, trial);
        if (costOf(next, trial) <= before) {
          taken = step;
          z = next;
          [r, trial] = [trial, r];
          damping = damping > LEAST_DAMPING ? damping / 10 : 0;
          break;
        }
      }
      damping = Math.max(10 * damping, LEAST_DAMPING);
    }
    if (taken === null) break;
    const enough = pinned === null ? SMALL_STEP : SMALL_STEP_PINNED;
    const settled = largest(taken) < enough || before - costOf(z, r) < SMALL_GAIN;
    if (settled && (iterations >= FREEZE_AFTER || pinned !== null)) break;
  }
  // along a ridge the last step was small enough for its own slopes to do
  if (pinned === null) compare.slopes(z, r, jacobian);
  const { normal } = normalEquations(jacobian, r, sd, z, pinned);
  return { z, residuals: r, sd, jacobian, normal, precision: factorOf(normal, n), cost: costOf(z, r), iterations };
}

/** The same place with one of its unknowns pinned. */
export function pinnedAt(minimum: Minimum, unknown: number): Minimum {
  const normal = Float64Array.from(minimum.normal);
  pin(normal, minimum.z.length, unknown);
  return { ...minimum, normal, precision: factorOf(normal, minimum.z.length) };
}

const factorOf = (normal: Float64Array, n: number): Float64Array => choleskyFactor(normal, n) ?? identity(n);

function pin(normal: Float64Array, n: number, unknown: number) {
  for (let a = 0; a < n; a++) {
    if (a >= unknown) normal[a * n + unknown] = 0;
    else normal[unknown * n + a] = 0;
  }
  normal[unknown * n + unknown] = 1;
}

/** Precision I + JᵀWJ (lower triangle) and the downhill direction −(z + JᵀWr). */
function normalEquations(
  jacobian: Float64Array,
  r: Float64Array,
  sd: Float64Array,
  z: Float64Array,
  pinned: number | null,
): { normal: Float64Array; downhill: Float64Array } {
  const n = z.length;
  const normal = identity(n);
  const downhill = Float64Array.from(z, (v) => -v);
  for (let i = 0; i < r.length; i++) {
    const w = 1 / (sd[i]! * sd[i]!);
    for (let a = 0; a < n; a++) {
      const ja = jacobian[i * n + a]!;
      if (ja === 0) continue;
      downhill[a]! -= w * ja * r[i]!;
      for (let b = 0; b <= a; b++) normal[a * n + b]! += w * ja * jacobian[i * n + b]!;
    }
  }
  if (pinned !== null) {
    downhill[pinned] = 0;
    pin(normal, n, pinned);
  }
  return { normal, downhill };
}

function solved(normal: Float64Array, downhill: Float64Array, damping: number, n: number): Float64Array | null {
  const damped = Float64Array.from(normal);
  if (damping > 0) for (let a = 0; a < n; a++) damped[a * n + a]! *= 1 + damping;
  const factor = choleskyFactor(damped, n);
  if (factor === null) return null;
  return solveUpper(factor, n, solveLower(factor, n, Float64Array.from(downhill)));
}

function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) most = Math.max(most, Math.abs(values[i]!));
  return most;
}

/** The identity matrix, row-major n × n. Source: definition. */
export function identity(n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) out[i * n + i] = 1;
  return out;
}
