import type { AxisTruth } from '../../fixtures/generate/photo/truth.ts';

export type Xy = readonly [number, number];

/** How far a read curve lies from the true one, shares of the plot frame. */
export type Closeness = { rms: number; largest: number; coverage: number };

const SAMPLES = 240;

/** Where a value in SI stands between the two ends of its axis. */
export function shareOn({ scale, min, max, siFactor }: AxisTruth): (si: number) => number {
  if (scale === 'linear') return (si) => (si / siFactor - min) / (max - min);
  return (si) => (si > 0 ? Math.log(si / siFactor / min) / Math.log(max / min) : -10);
}

/** Points of a line evenly apart along it. */
export function evenlyAlong(line: readonly Xy[], count = SAMPLES): Xy[] {
  const reach = [0];
  for (let i = 1; i < line.length; i++)
    reach.push(reach[i - 1]! + Math.hypot(line[i]![0] - line[i - 1]![0], line[i]![1] - line[i - 1]![1]));
  const whole = reach.at(-1)!;
  if (!(whole > 0)) return line.slice(0, 1);
  let i = 1;
  return Array.from({ length: count }, (_, k): Xy => {
    const at = (whole * k) / (count - 1);
    while (i < line.length - 1 && reach[i]! < at) i++;
    const step = reach[i]! - reach[i - 1]!;
    const share = step > 0 ? (at - reach[i - 1]!) / step : 0;
    const [a, b] = [line[i - 1]!, line[i]!];
    return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  });
}

/** Shortest distance of a point from a line. */
export function distanceTo(line: readonly Xy[], [x, y]: Xy): number {
  let nearest = line.length === 1 ? Math.hypot(x - line[0]![0], y - line[0]![1]) : Infinity;
  for (let i = 1; i < line.length; i++) {
    const [ax, ay] = line[i - 1]!;
    const [dx, dy] = [line[i]![0] - ax, line[i]![1] - ay];
    const along = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    nearest = Math.min(nearest, Math.hypot(x - ax - along * dx, y - ay - along * dy));
  }
  return nearest;
}

const rootMeanSquare = (values: readonly number[]) =>
  values.length ? Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length) : 0;

/**
 * A read curve against the true one, both as shares of the frame and sorted by flow. The true points within the flows
 * read count too, so that a hump cut off is seen. Null where there is no line to compare.
 */
export function closenessOf(read: readonly Xy[], truth: readonly Xy[]): Closeness | null {
  if (read.length < 2) return null;
  const [first, last] = [Math.min(...read.map(([x]) => x)), Math.max(...read.map(([x]) => x))];
  const fromRead = evenlyAlong(read).map((p) => distanceTo(truth, p));
  const fromTruth = evenlyAlong(truth)
    .filter(([x]) => x >= first - 1e-9 && x <= last + 1e-9)
    .map((p) => distanceTo(read, p));
  const [from, to] = [Math.min(...truth.map(([x]) => x)), Math.max(...truth.map(([x]) => x))];
  const shared = Math.max(0, Math.min(last, to) - Math.max(first, from));
  return {
    rms: Math.max(rootMeanSquare(fromRead), rootMeanSquare(fromTruth)),
    largest: Math.max(...fromRead, ...fromTruth),
    coverage: to > from ? Math.min(1, shared / (to - from)) : 0,
  };
}
