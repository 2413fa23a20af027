import type { PageLine } from './page-lines.ts';
import type { Chain } from './ridge-chains.ts';

/** Bent paper and lenses bow a straight line by this share of its length, at most. */
const BOW_SHARE = 0.035;
const LEAST_BOW_PX = 1.3;
const ROUGHEST_PX = 0.85;

/** Places along and across, and how far the stroke stands off there, in the order they run along. */
export type LinePoints = { along: number[]; across: number[]; strength: number[] };

/** A line and the points it was fitted to. */
export type FittedLine = PageLine & { readonly points: LinePoints };

/** Straight pieces of the strokes, each with its line. */
export function fittedPieces(chains: readonly Chain[], upright: boolean, isDark: boolean): FittedLine[] {
  const found: FittedLine[] = [];
  for (const { y, x, strength } of chains)
    for (const piece of straightPieces({ along: y, across: x, strength })) {
      const line = fitLine(piece, upright, isDark);
      if (line) found.push(line);
    }
  return found;
}

/** A stroke cut where it leaves the straight: a grid line that ran on along a curve, a curve itself. */
function straightPieces(piece: LinePoints): LinePoints[] {
  const { along, across } = piece;
  const n = along.length;
  if (n < 8) return [];
  const length = along[n - 1]! - along[0]!;
  const slope = (across[n - 1]! - across[0]!) / length;
  let most = 0;
  let at = 0;
  for (let i = 1; i < n - 1; i++) {
    const off = Math.abs(across[i]! - across[0]! - slope * (along[i]! - along[0]!));
    if (off > most) [most, at] = [off, i];
  }
  if (most <= LEAST_BOW_PX + BOW_SHARE * length) return [piece];
  return [...straightPieces(part(piece, 0, at + 1)), ...straightPieces(part(piece, at, n))];
}

const part = ({ along, across, strength }: LinePoints, from: number, to: number): LinePoints => ({
  along: along.slice(from, to),
  across: across.slice(from, to),
  strength: strength.slice(from, to),
});

/** A parabola through the points, those far off left out; null where they are no line. */
export function fitLine(points: LinePoints, upright: boolean, isDark: boolean): FittedLine | null {
  const { along, across, strength } = points;
  const n = along.length;
  const from = along[0]!;
  const to = along[n - 1]!;
  const middle = (from + to) / 2;
  let c: [number, number, number] = [0, 0, 0];
  let limit = Infinity;
  let rms = Infinity;
  let used = 0;
  for (let round = 0; round < 3; round++) {
    const m = new Float64Array(8);
    used = 0;
    for (let i = 0; i < n; i++) {
      const s = along[i]! - middle;
      const v = across[i]!;
      if (Math.abs(v - c[0] - c[1] * s - c[2] * s * s) > limit) continue;
      used++;
      const ss = s * s;
      m[0]! += s;
      m[1]! += ss;
      m[2]! += ss * s;
      m[3]! += ss * ss;
      m[4]! += v;
      m[5]! += v * s;
      m[6]! += v * ss;
    }
    if (used < 6) return null;
    c = parabola(used, m);
    let squares = 0;
    for (let i = 0; i < n; i++) {
      const s = along[i]! - middle;
      const off = Math.abs(across[i]! - c[0] - c[1] * s - c[2] * s * s);
      if (off <= limit) squares += off * off;
    }
    rms = Math.sqrt(squares / used);
    limit = Math.max(1, 2.5 * rms);
  }
  if (rms > ROUGHEST_PX) return null;
  const sorted = strength.toSorted((a, b) => a - b);
  return { upright, isDark, from, to, middle, c, strength: sorted[n >> 1]!, cover: used / (to - from + 1), points };
}

/** Least squares from sums of powers; short lines stay straight. */
function parabola(n: number, m: Float64Array): [number, number, number] {
  const [s1, s2, s3, s4, v0, v1, v2] = m as unknown as number[] & Record<0 | 1 | 2 | 3 | 4 | 5 | 6, number>;
  const d11 = s2 - (s1 * s1) / n;
  const d12 = s3 - (s1 * s2) / n;
  const d22 = s4 - (s2 * s2) / n;
  const e1 = v1 - (s1 * v0) / n;
  const e2 = v2 - (s2 * v0) / n;
  const det = d11 * d22 - d12 * d12;
  const c2 = n >= 40 && det > 1e-9 * d11 * d22 ? (d11 * e2 - d12 * e1) / det : 0;
  const c1 = d11 > 0 ? (e1 - c2 * d12) / d11 : 0;
  return [(v0 - c1 * s1 - c2 * s2) / n, c1, c2];
}
