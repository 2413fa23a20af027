import { choleskyFactor, solveLower, solveUpper } from '../../numeric/cholesky.ts';
import type { ScaleFit } from './scale-fit.ts';

/** A value at an end of the frame: how round it is (0 the roundest), and how far the straight fit was from it. */
export type ScaleEnd = {
  readonly value: number;
  readonly isRound: boolean;
  readonly roughness: number;
  readonly moved: number;
};

/** Both ends, and how well ticks between them stand where they should on a smoothly bent page. */
export type ScaleEnds = {
  readonly low: ScaleEnd;
  readonly high: ScaleEnd;
  readonly residual: number;
  readonly cost: number;
};

type Candidate = { value: number; roughness: number };
type Point = readonly [place: number, value: number];

/**
 * What the scale reads at both sides of the frame. Scales mostly end at a multiple of their step, or of a half, a
 * quarter, a fifth or a tenth of it; a page bends smoothly and not at the sides, so each pair of ends is judged by how
 * far the ticks stand from a smooth bend between them, and the rounder of two good pairs is taken.
 * @param points places of ticks (or labels) with their values
 * @param isSharp places are those of ticks, not of labels
 */
export function scaleEnds(fit: ScaleFit, points: readonly Point[], isSharp: boolean): ScaleEnds {
  const to = (v: number) => (fit.scale === 'log' ? Math.log(v) : v);
  const from = (t: number) => (fit.scale === 'log' ? Math.exp(t) : t);
  const line = points.map(([p, v]) => [p, to(v)] as const);
  const rawLow = localLine(line, 0) ?? fit.offset;
  const rawHigh = localLine(line, 1) ?? fit.offset + fit.slope;
  const span = rawHigh - rawLow;
  const candidates = (raw: number): Candidate[] => {
    const round = fit.scale === 'log' ? logRungs(raw) : linearRungs(raw, fit.step);
    const near = round.filter((c) => Math.abs(to(c.value) - raw) < FURTHEST * span);
    return [
      ...near,
      { value: Number(from(raw).toPrecision(4)), roughness: !isSharp ? 0.0045 : fit.scale === 'log' ? 0.005 : 0.0035 },
    ];
  };
  let best: { low: Candidate; high: Candidate; cost: number; residual: number } | null = null;
  for (const low of candidates(rawLow))
    for (const high of candidates(rawHigh)) {
      if (!(to(high.value) > to(low.value))) continue;
      const { residual, bend } = bendResidual(line, to(low.value), to(high.value));
      // labels stand less exactly than ticks, so roundness weighs more there
      const cost =
        residual / (isSharp ? 1 : 2.2) + (isSharp ? 1 : 2.5) * (low.roughness + high.roughness) + 0.04 * bend;
      if (!best || cost < best.cost) best = { low, high, cost, residual };
    }
  const end = ({ value, roughness }: Candidate, raw: number): ScaleEnd => ({
    value: Number(value.toPrecision(10)) + 0,
    isRound: roughness < 0.003,
    roughness,
    moved: Math.abs(to(value) - raw) / span,
  });
  return { low: end(best!.low, rawLow), high: end(best!.high, rawHigh), residual: best!.residual, cost: best!.cost };
}

const FURTHEST = 0.035;

function linearRungs(raw: number, step: number): Candidate[] {
  const out: Candidate[] = [];
  for (const [parts, roughness] of [
    [1, 0],
    [2, 0.0008],
    [4, 0.0014],
    [5, 0.0014],
    [10, 0.0022],
  ] as const) {
    const s = step / parts;
    const value = Math.round(raw / s) * s;
    if (!out.some((c) => Math.abs(c.value - value) < 1e-9 * step)) out.push({ value, roughness });
  }
  return out;
}

function logRungs(raw: number): Candidate[] {
  const decade = Math.floor(raw / Math.LN10 + 1e-9);
  const rungs: readonly (readonly [readonly number[], number])[] = [
    [[1], 0],
    [[2, 5], 0.0006],
    [[3, 4, 6, 8, 1.5], 0.001],
    [[7, 9, 2.5, 1.2, 3.5], 0.002],
  ];
  return rungs.flatMap(([mantissas, roughness]) =>
    mantissas.flatMap((m) => [-1, 0, 1].map((d) => ({ value: m * 10 ** (decade + d), roughness }))),
  );
}

/** What a bend that vanishes at both ends leaves of the places, root mean square, and how strong it is; shares of the side. */
function bendResidual(points: readonly Point[], low: number, high: number): { residual: number; bend: number } {
  const rows = points.map(([p, t]) => ({ s: (t - low) / (high - low), p }));
  const order = Math.max(0, Math.min(2, Math.floor((points.length - 2) / 2)));
  const basis = (s: number) => [s * (1 - s), s * (1 - s) * (2 * s - 1)].slice(0, order);
  const a = new Float64Array(order * order);
  const b = new Float64Array(order);
  for (const { s, p } of rows) {
    const row = basis(s);
    for (let i = 0; i < order; i++) {
      b[i]! += row[i]! * (p - s);
      for (let j = 0; j < order; j++) a[i * order + j]! += row[i]! * row[j]!;
    }
  }
  for (let i = 0; i < order; i++) a[i * order + i]! += 1e-3;
  const l = order ? choleskyFactor(a, order) : null;
  const bend = l ? Array.from(solveUpper(l, order, solveLower(l, order, b))) : [];
  const left = rows.map(({ s, p }) => p - s - basis(s).reduce((sum, v, i) => sum + v * (bend[i] ?? 0), 0));
  const spare = Math.max(1, rows.length - order);
  return {
    residual: Math.sqrt(left.reduce((sum, e) => sum + e * e, 0) / spare),
    bend: bend.reduce((sum, c) => sum + Math.abs(c), 0) / 4,
  };
}

/** Weighted straight line through the points, read at an end: weights fall with distance from it. */
function localLine(points: readonly Point[], end: 0 | 1): number | null {
  if (points.length < 2) return null;
  let [sw, sx, sy, sxx, sxy] = [0, 0, 0, 0, 0];
  for (const [x, y] of points) {
    const w = 1 / (0.2 + Math.abs(x - end)) ** 2;
    sw += w;
    sx += w * x;
    sy += w * y;
    sxx += w * x * x;
    sxy += w * x * y;
  }
  const det = sw * sxx - sx * sx;
  if (det < 1e-12) return null;
  const slope = (sw * sxy - sx * sy) / det;
  return (sy - slope * sx) / sw + slope * end;
}
