import type { TracedCurve } from './trace.ts';

/** Where two curves meet, as index ranges in both. */
export type Meeting = { readonly a: readonly [number, number]; readonly b: readonly [number, number] };

const TOUCH_PX = 4.5;
/** Points of a trace (2.5 px apart) looked at on both sides of a meeting. */
const BRANCH = 20;
const SHORTEST_BRANCH = 8;
/** A course through a meeting that is rougher than this (root mean square, px) has a kink in it. */
const KINK_PX = 0.35;

/**
 * Curves of one ink that cross at a shallow angle may have changed places on the way. At each meeting of two traces
 * both ways of joining the branches are compared, and the smoother one is kept.
 * @returns the curves, and places where both ways are about equally smooth
 */
export function untangle(curves: readonly (TracedCurve | null)[]): {
  curves: (TracedCurve | null)[];
  unsure: { curve: number; x: number; y: number }[];
} {
  const out = [...curves];
  const unsure: { curve: number; x: number; y: number }[] = [];
  for (let p = 0; p < out.length; p++)
    for (let q = p + 1; q < out.length; q++) {
      if (out[p]?.drawn !== 'line' || out[q]?.drawn !== 'line') continue;
      for (let k = 0; ; k++) {
        const meeting = meetings(out[p]!, out[q]!)[k];
        if (!meeting) break;
        const joined = compare(out[p]!, out[q]!, meeting);
        if (!joined) continue;
        if (joined.swapped < 0.5 * joined.kept && joined.kept > KINK_PX)
          [out[p], out[q]] = exchange(out[p]!, out[q]!, meeting);
        else if (joined.swapped < 1.3 * joined.kept && joined.kept > KINK_PX)
          for (const curve of [p, q])
            unsure.push({ curve, x: out[p]!.trace.x[meeting.a[0]]!, y: out[p]!.trace.y[meeting.a[0]]! });
      }
    }
  return { curves: out, unsure };
}

/** Stretches where two traces touch, as index ranges in both. @param touch how near counts, sheet pixels */
export function meetings({ trace: a }: TracedCurve, { trace: b }: TracedCurve, touch: number = TOUCH_PX): Meeting[] {
  const runs: { a: [number, number]; b: [number, number] }[] = [];
  for (let i = 0, j = 0; i < a.x.length; i++) {
    const gap = (k: number) => Math.hypot(a.x[i]! - b.x[k]!, a.y[i]! - b.y[k]!);
    while (j + 1 < b.x.length && gap(j + 1) <= gap(j)) j++;
    if (gap(j) > touch) continue;
    const last = runs.at(-1);
    if (last && i - last.a[1] <= 4) {
      last.a[1] = i;
      last.b[1] = Math.max(last.b[1], j);
    } else runs.push({ a: [i, i], b: [j, j] });
  }
  return runs.filter(
    ({ a: [i0, i1], b: [j0, j1] }) =>
      i0 >= SHORTEST_BRANCH &&
      j0 >= SHORTEST_BRANCH &&
      i1 < a.x.length - SHORTEST_BRANCH &&
      j1 < b.x.length - SHORTEST_BRANCH,
  );
}

/** A stretch of a trace, sheet pixels. */
export type Branch = { x: number[]; y: number[] };

function branch({ trace }: TracedCurve, from: number, to: number): Branch {
  const x: number[] = [];
  const y: number[] = [];
  for (let i = Math.max(0, from); i < Math.min(trace.x.length, to); i++) {
    x.push(trace.x[i]!);
    y.push(trace.y[i]!);
  }
  return { x, y };
}

function compare(
  a: TracedCurve,
  b: TracedCurve,
  { a: [i0, i1], b: [j0, j1] }: Meeting,
): { kept: number; swapped: number } | null {
  const aIn = branch(a, i0 - BRANCH, i0);
  const bIn = branch(b, j0 - BRANCH, j0);
  const aOut = branch(a, i1 + 1, i1 + 1 + BRANCH);
  const bOut = branch(b, j1 + 1, j1 + 1 + BRANCH);
  const costs = [roughness(aIn, aOut), roughness(bIn, bOut), roughness(aIn, bOut), roughness(bIn, aOut)];
  if (costs.some((c) => c === null)) return null;
  const [aa, bb, ab, ba] = costs as [number, number, number, number];
  return { kept: Math.max(aa, bb), swapped: Math.max(ab, ba) };
}

/** Root mean square distance of two branches from one cubic through both, in the direction from one to the other. */
export function roughness(before: Branch, after: Branch): number | null {
  const x = [...before.x, ...after.x];
  const y = [...before.y, ...after.y];
  const n = x.length;
  const dx = x[n - 1]! - x[0]!;
  const dy = y[n - 1]! - y[0]!;
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) return null;
  const t = x.map((v, i) => (2 * ((v - x[0]!) * dx + (y[i]! - y[0]!) * dy)) / (length * length) - 1);
  const s = x.map((v, i) => (-(v - x[0]!) * dy + (y[i]! - y[0]!) * dx) / length);
  // least squares on Legendre polynomials, by Gram–Schmidt over the samples
  const basis: number[][] = [];
  let rest = s;
  for (let degree = 0; degree < 4; degree++) {
    let column = t.map((v) => v ** degree);
    for (const b of basis) {
      const d = dot(column, b);
      column = column.map((v, i) => v - d * b[i]!);
    }
    const size = Math.sqrt(dot(column, column));
    if (size < 1e-9) return null;
    column = column.map((v) => v / size);
    basis.push(column);
    const d = dot(rest, column);
    rest = rest.map((v, i) => v - d * column[i]!);
  }
  return Math.sqrt(dot(rest, rest) / n);
}

const dot = (a: number[], b: number[]): number => a.reduce((s, v, i) => s + v * b[i]!, 0);

/** The two curves with their right-hand branches exchanged at a meeting. */
export function exchange(
  a: TracedCurve,
  b: TracedCurve,
  { a: [i0, i1], b: [j0, j1] }: Meeting,
): [TracedCurve, TracedCurve] {
  const i = (i0 + i1) >> 1;
  const j = (j0 + j1) >> 1;
  const join = (left: TracedCurve, k: number, right: TracedCurve, l: number): TracedCurve => {
    const of = (key: 'x' | 'y' | 'seen') =>
      Float64Array.from([...left.trace[key].subarray(0, k), ...right.trace[key].subarray(l + 1)]);
    return { ...left, trace: { x: of('x'), y: of('y'), seen: of('seen') } };
  };
  return [join(a, i, b, j), join(b, j, a, i)];
}
