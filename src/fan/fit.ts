import { choleskyFactor, solveLower, solveUpper } from '../numeric/cholesky.ts';
import { CURVE_UNKNOWNS, type CurveAt, type CurveModel } from './model.ts';
import type { PowerObservation, PressureObservation } from './observation.ts';

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
};

/** Extra linear-in-curve knowledge: a residual in standard deviations, zero where satisfied. */
export type PseudoObservation = (curve: CurveAt) => number;

/** Even a perfect reading is not believed closer than this share of the top pressure: the model itself is not exact. */
const MODEL_ERROR = 0.004;
const MAX_ITERATIONS = 9;
const FREEZE_AFTER = 5;

/**
 * Most likely curve and its doubt, by Gauss–Newton with step halving on the whitened unknowns.
 * Errors of one observation enter through the curve's slope (effective variance); errors shared by several are unknowns
 * of their own, so they do not average away.
 * Sources: JCGM 100:2008 (GUM) 5.2 on correlated inputs; J. Orear, Am. J. Phys. 50 (1982) 912 (effective variance);
 * J. Nocedal & S. J. Wright, Numerical Optimization (2006) §10.3.
 * @param start deviates to start from
 */
export function fitCurve(
  model: CurveModel,
  pressures: readonly PressureObservation[],
  powers: readonly PowerObservation[],
  pseudo: readonly PseudoObservation[],
  start: Float64Array,
): Posterior {
  const sharedErrors = [...new Set([...pressures, ...powers].flatMap((o) => o.shared.map((s) => s.error)))].sort();
  const n = CURVE_UNKNOWNS + sharedErrors.length;
  const m = pressures.length + powers.length + pseudo.length;
  const place = new Map(sharedErrors.map((name, i) => [name, CURVE_UNKNOWNS + i]));
  let z: Float64Array = new Float64Array(n);
  z.set(start.subarray(0, CURVE_UNKNOWNS));

  const residuals = (at: Float64Array, out: Float64Array) => {
    const curve = model.curve(at);
    let row = 0;
    for (const o of pressures) {
      let flow = o.flow_m3_s;
      let pressure = o.pressure_Pa;
      for (const s of o.shared) {
        const e = at[place.get(s.error)!]!;
        flow += e * s.flow_m3_s;
        pressure += e * s.value;
      }
      flow = Math.max(flow, 0);
      out[row++] = (o.kind === 'static' ? curve.static_Pa(flow) : curve.total_Pa(flow)) - pressure;
    }
    for (const o of powers) {
      let flow = o.flow_m3_s;
      let lnPower = Math.log(o.shaftPower_W);
      for (const s of o.shared) {
        const e = at[place.get(s.error)!]!;
        flow += e * s.flow_m3_s;
        lnPower += e * s.value;
      }
      out[row++] = Math.log(Math.max(curve.shaftPower_W(Math.max(flow, 0)), 1e-9)) - lnPower;
    }
    for (const p of pseudo) out[row++] = p(curve);
    return out;
  };

  const deviations = (at: Float64Array, out: Float64Array) => {
    const curve = model.curve(at);
    const step = 1e-3 * model.base.flowScale_m3_s;
    let row = 0;
    for (const o of pressures) {
      const pressureAt = o.kind === 'static' ? curve.static_Pa : curve.total_Pa;
      const slope =
        (pressureAt(o.flow_m3_s + step) - pressureAt(Math.max(o.flow_m3_s - step, 0))) /
        (step + Math.min(step, o.flow_m3_s));
      let variance = (MODEL_ERROR * model.base.pressureScale_Pa) ** 2;
      for (const e of o.own) variance += (slope * e.flow_m3_s - e.value) ** 2;
      out[row++] = Math.sqrt(variance);
    }
    for (const o of powers) {
      let variance = MODEL_ERROR ** 2;
      for (const e of o.own) variance += e.value ** 2;
      out[row++] = Math.sqrt(variance);
    }
    for (let i = 0; i < pseudo.length; i++) out[row++] = 1;
    return out;
  };

  const sd = new Float64Array(m);
  const r = new Float64Array(m);
  const trial = new Float64Array(m);
  const costOf = (at: Float64Array, res: Float64Array) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += at[i]! ** 2;
    for (let i = 0; i < m; i++) sum += (res[i]! / sd[i]!) ** 2;
    return 0.5 * sum;
  };

  let precision = identity(n);
  let iterations = 0;
  let cost = 0;
  if (m > 0) {
    const jacobian = new Float64Array(m * n);
    for (; iterations < MAX_ITERATIONS; iterations++) {
      if (iterations <= FREEZE_AFTER) deviations(z, sd);
      residuals(z, r);
      cost = costOf(z, r);
      fillJacobian(jacobian, z, r, trial, residuals, n, m);
      const normal = identity(n);
      const step = new Float64Array(n);
      for (let a = 0; a < n; a++) step[a] = -z[a]!;
      for (let i = 0; i < m; i++) {
        const w = 1 / (sd[i]! * sd[i]!);
        for (let a = 0; a < n; a++) {
          const ja = jacobian[i * n + a]!;
          if (ja === 0) continue;
          step[a]! -= w * ja * r[i]!;
          for (let b = 0; b <= a; b++) normal[a * n + b]! += w * ja * jacobian[i * n + b]!;
        }
      }
      const factor = choleskyFactor(normal, n);
      if (factor === null) break;
      precision = factor;
      solveUpper(factor, n, solveLower(factor, n, step));
      let length = 1;
      let next = z;
      for (; length > 1e-3; length /= 2) {
        next = z.map((v, a) => v + length * step[a]!);
        if (costOf(next, residuals(next, trial)) <= cost) break;
      }
      if (length <= 1e-3) break;
      z = next;
      if (Math.max(...step.map(Math.abs)) * length < 1e-4 && iterations > FREEZE_AFTER) break;
    }
    cost = costOf(z, residuals(z, r));
  }
  return { sharedErrors, mode: z, precision, dimensions: n, iterations, cost };
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

function fillJacobian(
  jacobian: Float64Array,
  z: Float64Array,
  r: Float64Array,
  trial: Float64Array,
  residuals: (z: Float64Array, out: Float64Array) => Float64Array,
  n: number,
  m: number,
) {
  const step = 1e-4;
  for (let a = 0; a < n; a++) {
    const kept = z[a]!;
    z[a] = kept + step;
    residuals(z, trial);
    z[a] = kept;
    for (let i = 0; i < m; i++) jacobian[i * n + a] = (trial[i]! - r[i]!) / step;
  }
}

function identity(n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) out[i * n + i] = 1;
  return out;
}
