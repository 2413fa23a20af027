import { choleskyFactor, solveLower, solveUpper } from '../numeric/cholesky.ts';
import type { CurveModel } from './model.ts';
import type { PowerObservation, PressureObservation } from './observation.ts';
import { comparison, type Comparison, type PseudoObservation } from './residuals.ts';

/** Belief about the curve after the evidence: most likely deviates and the factor of their precision. */
export type Posterior = {
  /** names of the errors that follow the curve's own unknowns in z */
  sharedErrors: string[];
  mode: Float64Array;
  /** lower Cholesky factor of the precision matrix */
  precision: Float64Array;
  dimensions: number;
  iterations: number;
  /** half the squared distance at the mode, for comparing explanations */
  cost: number;
  /** how each observation fits at the mode: pressures, then powers, in their order */
  checks: ObservationCheck[];
};

/** One observation against the curve that all of them give. */
export type ObservationCheck = {
  path: string;
  kind: 'pressure' | 'power';
  /** observation less curve: [Pa], or a share for powers */
  misfit: number;
  /** the same with this observation left out of the fit, in its standard deviations: beyond ±3 it does not belong to the others */
  leftOut: number;
};

const MOST_ITERATIONS = 30;
/** The standard deviations follow the slope of the curve for so many steps, then stand still, lest it all goes in circles. */
const FREEZE_AFTER = 5;
const SMALL_STEP = 1e-3;
const LEAST_DAMPING = 1e-3;
const MOST_DAMPING = 1e6;

/**
 * Most likely curve and its doubt, by damped Gauss–Newton on the whitened unknowns.
 * Errors of one observation enter through the curve's slope (effective variance); errors shared by several are unknowns
 * of their own, so they do not average away.
 * Sources: JCGM 100:2008 (GUM) 5.2 on correlated inputs; J. Orear, Am. J. Phys. 50 (1982) 912 (effective variance);
 * D. W. Marquardt, J. SIAM 11 (1963) 431–441 (damping); leaving one out: C. E. Rasmussen & C. K. I. Williams (2006) 5.4.2.
 * @param start deviates of the curve's own unknowns to start from
 */
export function fitCurve(
  model: CurveModel,
  pressures: readonly PressureObservation[],
  powers: readonly PowerObservation[],
  pseudo: readonly PseudoObservation[],
  start: Float64Array,
): Posterior {
  const compare = comparison(model, pressures, powers, pseudo);
  const { sharedErrors, unknowns: n, residuals: m } = compare;
  let z: Float64Array = new Float64Array(n);
  z.set(start);
  if (m === 0)
    return { sharedErrors, mode: z, precision: identity(n), dimensions: n, iterations: 0, cost: 0, checks: [] };

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
    const { normal, downhill } = normalEquations(jacobian, r, sd, z, n, m);
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
    if (iterations > FREEZE_AFTER && largest(taken) < SMALL_STEP) break;
  }
  compare.slopes(z, r, jacobian);
  const { normal } = normalEquations(jacobian, r, sd, z, n, m);
  const precision = choleskyFactor(normal, n) ?? identity(n);
  return {
    sharedErrors,
    mode: z,
    precision,
    dimensions: n,
    iterations,
    cost: costOf(z, r),
    checks: checksOf(compare, { r, sd, jacobian, precision }),
  };
}

/** One draw of the unknowns: mode + L⁻ᵀξ (Laplace approximation). */
export function drawUnknowns(
  posterior: Posterior,
  deviates: Float64Array,
  offset: number,
  out: Float64Array,
): Float64Array {
  const n = posterior.dimensions;
  for (let i = 0; i < n; i++) out[i] = deviates[offset + i]!;
  solveUpper(posterior.precision, n, out);
  for (let i = 0; i < n; i++) out[i]! += posterior.mode[i]!;
  return out;
}

/** Precision I + JᵀWJ and the downhill direction −(z + JᵀWr). */
function normalEquations(
  jacobian: Float64Array,
  r: Float64Array,
  sd: Float64Array,
  z: Float64Array,
  n: number,
  m: number,
): { normal: Float64Array; downhill: Float64Array } {
  const normal = identity(n);
  const downhill = Float64Array.from(z, (v) => -v);
  for (let i = 0; i < m; i++) {
    const w = 1 / (sd[i]! * sd[i]!);
    for (let a = 0; a < n; a++) {
      const ja = jacobian[i * n + a]!;
      if (ja === 0) continue;
      downhill[a]! -= w * ja * r[i]!;
      for (let b = 0; b <= a; b++) normal[a * n + b]! += w * ja * jacobian[i * n + b]!;
    }
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

/** Misfit of each observation, and what it is without it: r/(s·√(1 − leverage)). */
function checksOf(
  compare: Comparison,
  at: { r: Float64Array; sd: Float64Array; jacobian: Float64Array; precision: Float64Array },
): ObservationCheck[] {
  const n = compare.unknowns;
  return compare.paths.map(({ path, kind }, i) => {
    const row = at.jacobian.slice(i * n, (i + 1) * n);
    solveLower(at.precision, n, row);
    const leverage = row.reduce((s, v) => s + v * v, 0) / at.sd[i]! ** 2;
    const leftOut = -at.r[i]! / (at.sd[i]! * Math.sqrt(Math.max(1 - leverage, 1e-6)));
    return { path, kind, misfit: -at.r[i]!, leftOut };
  });
}

const largest = (values: Float64Array): number => values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);

function identity(n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) out[i * n + i] = 1;
  return out;
}
