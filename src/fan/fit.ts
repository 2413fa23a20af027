import { solveLower, solveUpper } from '../numeric/cholesky.ts';
import { alongFlow, lnChance, type AlongFlow } from './along-flow.ts';
import { descend, identity, type Minimum } from './descend.ts';
import type { CurveModel } from './model.ts';
import type { PowerObservation, PressureObservation } from './observation.ts';
import { comparison, type Comparison, type PseudoObservation } from './residuals.ts';
import { UNKNOWN } from './unknowns.ts';

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
  /** ln of how likely the observations are, up to a constant: for comparing explanations of the same readings */
  lnEvidence: number;
  /** where the level of flow is no bell curve: how everything goes along it; null where the bell curve around the mode will do */
  along: AlongFlow | null;
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

/**
 * Most likely curve and its doubt.
 * Errors of one observation enter through the curve's slope (effective variance); errors shared by several are unknowns
 * of their own, so they do not average away.
 * Sources: JCGM 100:2008 (GUM) 5.2 on correlated inputs; J. Orear, Am. J. Phys. 50 (1982) 912 (effective variance);
 * leaving one out: C. E. Rasmussen & C. K. I. Williams, Gaussian Processes for Machine Learning (2006) 5.4.2.
 * @param starts deviates of the curve's own unknowns to start from, the likeliest first
 * @param lopsided look whether the level of flow is no bell curve; for mere comparisons not worth its dozen fits
 */
export function fitCurve(
  model: CurveModel,
  pressures: readonly PressureObservation[],
  powers: readonly PowerObservation[],
  pseudo: readonly PseudoObservation[],
  starts: readonly Float64Array[],
  lopsided = true,
): Posterior {
  const compare = comparison(model, pressures, powers, pseudo);
  const { sharedErrors, unknowns: n } = compare;
  const wide = (start: Float64Array) => {
    const z = new Float64Array(n);
    z.set(start);
    return z;
  };
  if (compare.residuals === 0) {
    const nothing = { precision: identity(n), iterations: 0, cost: 0, lnEvidence: 0, along: null, checks: [] };
    return { sharedErrors, mode: wide(starts[0]!), dimensions: n, ...nothing };
  }
  const best = bestMinimum(compare, starts.map(wide));
  const along = lopsided ? alongFlow(compare, best) : null;
  return {
    sharedErrors,
    mode: along === null ? best.z : middleOf(along),
    precision: best.precision,
    dimensions: n,
    iterations: best.iterations,
    cost: best.cost,
    lnEvidence: lnChance(best) + compare.lnPerPascal(best.z),
    along,
    checks: checksOf(compare, best),
  };
}

/** A fit this far from its evidence [per observation] is worth trying again from elsewhere. */
const POOR_FIT = 1.5;

/** The first minimum that sits well; where none does, the best of them. */
function bestMinimum(compare: Comparison, starts: readonly Float64Array[]): Minimum {
  let best: Minimum | null = null;
  for (const start of starts) {
    const found = descend(compare, start);
    if (best === null || found.cost < best.cost) best = found;
    if (best.cost <= POOR_FIT * Math.max(compare.residuals, 2)) break;
  }
  return best!;
}

/** One draw of the unknowns: mode + L⁻ᵀξ (Laplace approximation), along the level of flow where that is no bell curve. */
export function drawUnknowns(
  posterior: Posterior,
  deviates: Float64Array,
  offset: number,
  out: Float64Array,
): Float64Array {
  const { dimensions: n, along } = posterior;
  for (let i = 0; i < n; i++) out[i] = deviates[offset + i]!;
  if (along !== null) return drawAlong(along, out);
  solveUpper(posterior.precision, n, out);
  for (let i = 0; i < n; i++) out[i]! += posterior.mode[i]!;
  return out;
}

/** Deviates in, unknowns out: the level of flow first, then the rest as it is spread there. */
function drawAlong(along: AlongFlow, out: Float64Array): Float64Array {
  const level = along.levelAt(out[UNKNOWN.flowLevel]!);
  const { nodes } = along;
  let i = 0;
  while (i < nodes.length - 2 && nodes[i + 1]!.level < level) i++;
  const [a, b] = [nodes[i]!, nodes[i + 1]!];
  const t = (level - a.level) / (b.level - a.level);
  out[UNKNOWN.flowLevel] = 0;
  solveUpper((t < 0.5 ? a : b).precision, out.length, out);
  for (let k = 0; k < out.length; k++) out[k]! += (1 - t) * a.z[k]! + t * b.z[k]!;
  out[UNKNOWN.flowLevel] = level;
  return out;
}

/** The draw in the middle of all: as many curves reach further as fall short. */
const middleOf = (along: AlongFlow): Float64Array => drawAlong(along, new Float64Array(along.nodes[0]!.z.length));

/** Misfit of each observation, and what it is without it: r/(s·√(1 − leverage)). */
function checksOf(compare: Comparison, at: Minimum): ObservationCheck[] {
  const n = compare.unknowns;
  return compare.paths.map(({ path, kind }, i) => {
    const row = at.jacobian.slice(i * n, (i + 1) * n);
    solveLower(at.precision, n, row);
    const leverage = row.reduce((s, v) => s + v * v, 0) / at.sd[i]! ** 2;
    const leftOut = -at.residuals[i]! / (at.sd[i]! * Math.sqrt(Math.max(1 - leverage, 1e-6)));
    return { path, kind, misfit: -at.residuals[i]!, leftOut };
  });
}
