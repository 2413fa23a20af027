import { choleskyFactor, solveLower, solveUpper } from '../../numeric/cholesky.ts';
import { basisAt } from '../trace/smooth-line.ts';

/** One place in the frame where the true fraction is known: the correction to add there, and how much to trust it. */
export type Control = { readonly u: number; readonly v: number; readonly correction: number; readonly weight: number };

export type BendField = {
  /** what to add to a fraction at (u, v) */
  at(u: number, v: number): number;
  /** root mean square of what it leaves at the controls it believes */
  readonly residual: number;
  readonly largest: number;
};

export const NO_BEND: BendField = { at: () => 0, residual: 0, largest: 0 };

/**
 * Smooth correction over the frame through scattered controls: a tensor B-spline with a penalty on its bending, robust
 * against controls that were mistaken (a curve taken for a stretch of grid line).
 * @param intervalsU,intervalsV knots: as many as the grid has lines to show bends with
 * Source: P. H. C. Eilers & B. D. Marx, Statistical Science 11 (1996) 89–121, in two dimensions; Tukey's biweight.
 */
export function fitBendField(
  controls: readonly Control[],
  intervalsU: number,
  intervalsV: number,
  stiffness: number,
): BendField {
  if (controls.length < 4) return NO_BEND;
  const nu = intervalsU + 3;
  const nv = intervalsV + 3;
  const n = nu * nv;
  const rows = controls.map((c) => {
    const a = basisAt(clamp01(c.u) * intervalsU, intervalsU);
    const b = basisAt(clamp01(c.v) * intervalsV, intervalsV);
    const index = new Int32Array(16);
    const value = new Float64Array(16);
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++) {
        index[4 * i + j] = (a.first + i) * nv + b.first + j;
        value[4 * i + j] = a.b[i]! * b.b[j]!;
      }
    return { index, value };
  });
  const total = controls.reduce((s, c) => s + c.weight, 0);
  const penalty = bendingPenalty(nu, nv, stiffness * total, 1e-7 * total);
  const robust = new Float64Array(controls.length).fill(1);
  let field: Float64Array = new Float64Array(n);
  for (let round = 0; round < 4; round++) {
    const a = penalty.slice();
    const right = new Float64Array(n);
    controls.forEach((c, k) => {
      const w = c.weight * robust[k]!;
      if (w === 0) return;
      const { index, value } = rows[k]!;
      for (let p = 0; p < 16; p++) {
        const wp = w * value[p]!;
        right[index[p]!]! += wp * c.correction;
        for (let q = 0; q < 16; q++) if (index[q]! <= index[p]!) a[index[p]! * n + index[q]!]! += wp * value[q]!;
      }
    });
    const l = choleskyFactor(a, n);
    if (!l) return NO_BEND;
    field = solveUpper(l, n, solveLower(l, n, right));
    const errors = controls.map((c, k) => Math.abs(c.correction - at(rows[k]!)));
    const spread = 1.4826 * medianOf(errors);
    const width = Math.max(4.7 * spread, 8e-4);
    errors.forEach((e, k) => (robust[k] = e < width ? (1 - (e / width) ** 2) ** 2 : 0));
  }
  let sum = 0;
  let weight = 0;
  let largest = 0;
  controls.forEach((c, k) => {
    const w = c.weight * robust[k]!;
    const value = at(rows[k]!);
    sum += w * (c.correction - value) ** 2;
    weight += w;
    largest = Math.max(largest, Math.abs(value));
  });
  return {
    at(u, v) {
      const a = basisAt(clamp01(u) * intervalsU, intervalsU);
      const b = basisAt(clamp01(v) * intervalsV, intervalsV);
      let s = 0;
      for (let i = 0; i < 4; i++)
        for (let j = 0; j < 4; j++) s += field[(a.first + i) * nv + b.first + j]! * a.b[i]! * b.b[j]!;
      return s;
    },
    residual: weight > 0 ? Math.sqrt(sum / weight) : 0,
    largest,
  };

  function at({ index, value }: { index: Int32Array; value: Float64Array }): number {
    let s = 0;
    for (let p = 0; p < 16; p++) s += field[index[p]!]! * value[p]!;
    return s;
  }
}

const clamp01 = (f: number) => Math.min(1, Math.max(0, f));

/** Second differences along both directions, squared and summed, as a matrix; a whisper of size penalty keeps it solvable. */
function bendingPenalty(nu: number, nv: number, lambda: number, ridge: number): Float64Array {
  const n = nu * nv;
  const a = new Float64Array(n * n);
  const add = (i0: number, i1: number, i2: number) => {
    const index = [i0, i1, i2];
    const d = [1, -2, 1];
    for (let p = 0; p < 3; p++) for (let q = 0; q < 3; q++) a[index[p]! * n + index[q]!]! += lambda * d[p]! * d[q]!;
  };
  for (let i = 0; i < nu; i++) for (let j = 0; j + 2 < nv; j++) add(i * nv + j, i * nv + j + 1, i * nv + j + 2);
  for (let j = 0; j < nv; j++) for (let i = 0; i + 2 < nu; i++) add(i * nv + j, (i + 1) * nv + j, (i + 2) * nv + j);
  for (let i = 0; i < n; i++) a[i * n + i]! += ridge;
  return a;
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}
