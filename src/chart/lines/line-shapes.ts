import type { AxisHint, AxisQuantity } from '../hints.ts';
import type { LineValues } from './line-values.ts';

/**
 * How much speaks against a line being a curve of a quantity, from its shape alone: 0 nothing, 1 a little, 4 a lot.
 * Pressure falls towards free delivery; efficiency starts at nothing and has a top; power never is nothing.
 */
export function shapeCost(line: LineValues, axis: AxisHint, quantity: AxisQuantity): number {
  const { u, v, value } = line;
  const n = v.length;
  const top = Math.max(...v);
  const at = v.indexOf(top);
  const first = value[0]!;
  const last = value[n - 1]!;
  const most = Math.max(...value);
  const falls = v[Math.floor(0.75 * n)]! - v[n - 1]!;
  const endsAtZero = axis.scale === 'linear' && axis.min === 0 && v[n - 1]! < 0.02;
  const startsAtZero = axis.scale === 'linear' && axis.min === 0 && v[0]! < 0.06 && u[0]! < 0.12;
  let cost = 0;
  if (quantity === 'shaft_power') {
    if (endsAtZero) cost += 5;
    if (startsAtZero) cost += 2;
    if (axis.min === 0 && first > 2 * last) cost += 2;
    // power sinks little after its top
    cost += 8 * Math.max(0, 0.78 - last / most) + 3 * Math.max(0, 0.75 - last / Math.max(first, 1e-9));
    if (axis.min === 0 && most > 8 * Math.max(last, 1e-9)) cost += 2;
    return cost;
  }
  if (quantity === 'efficiency') {
    if (most > 1.0) cost += 3;
    if (u[0]! < 0.12 && first > 0.3 * most) cost += 4;
    if (at < 0.12 * n) cost += 4;
    if (first > last + 0.5 * most) cost += 2;
    return cost;
  }
  // pressures
  if (falls <= 0.003) cost += 4;
  else if (falls < 0.03) cost += 1;
  if (last > 0.85 * most) cost += 2;
  if (last > 1.02 * first) cost += 4;
  if (startsAtZero) cost += 5;
  if (at > 0.75 * n) cost += 3;
  return cost;
}

/**
 * Whether a line is one along which pressure goes with the square of flow: the curve of a system, or one of equal
 * efficiency. Both rise all along.
 * Source: fan laws (points of equal efficiency lie on p ∝ Q²); system curves likewise.
 */
export function isSquareLaw(line: LineValues): boolean {
  const points = line.flow
    .map((q, i) => [q, line.value[i]!] as const)
    .filter(([q, p]) => q > 0 && p > 0.015 * Math.max(...line.value) && p > 0);
  if (points.length < 8) return false;
  const x = points.map(([q]) => Math.log(q));
  const y = points.map(([, p]) => Math.log(p));
  const span = Math.max(...x) - Math.min(...x);
  if (span < 0.08) return false;
  const mx = mean(x);
  const my = mean(y);
  const slope = mean(x.map((v, i) => (v - mx) * (y[i]! - my))) / mean(x.map((v) => (v - mx) ** 2));
  const off = Math.sqrt(mean(x.map((v, i) => (y[i]! - my - slope * (v - mx)) ** 2)));
  const isRising = line.value.every((v, i) => i === 0 || v >= line.value[i - 1]! - 0.01 * Math.max(...line.value));
  return slope > 1.55 && slope < 2.5 && off < 0.12 * Math.max(0.5, span) && isRising;
}

const mean = (values: readonly number[]) => values.reduce((s, v) => s + v, 0) / values.length;

/** Share of points at which flow × pressure over power is no possible efficiency; null where they do not overlap. */
export function impossibleShare(
  pressure: LineValues,
  power: LineValues,
  at: (line: LineValues, q: number) => number | null,
): number | null {
  let bad = 0;
  let looks = 0;
  let most = 0;
  pressure.flow.forEach((q, i) => {
    const w = at(power, q);
    if (w === null || !(w > 0)) return;
    const efficiency = (q * pressure.value[i]!) / w;
    looks++;
    most = Math.max(most, efficiency);
    if (efficiency > HIGHEST) bad++;
  });
  if (looks < 6) return null;
  return most < LOWEST_BEST ? 1 : bad / looks;
}

/** No fan does better; one whose best is below this was read wrong. */
const HIGHEST = 0.92;
const LOWEST_BEST = 0.08;
