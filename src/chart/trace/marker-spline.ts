/** A place on the sheet, pixels. */
export type Place = readonly [number, number];

/** Points of a drawn curve lie so far apart, sheet pixels. */
const STEP_PX = 2.5;

/**
 * A smooth curve through test points, in both coordinates over the way from point to point: it goes through every one,
 * bends as little as it can between them, and runs out straight.
 * @param points three or more, each apart from the one before it
 * Source: natural cubic spline over chord length (C. de Boor, A Practical Guide to Splines, 1978, ch. IV).
 */
export function smoothThrough(points: readonly Place[]): Place[] {
  const way = wayAlong(points);
  const [fx, fy] = [0, 1].map((c) =>
    naturalSpline(
      way,
      points.map((p) => p[c]!),
    ),
  ) as [Curve, Curve];
  return along(way.at(-1)!, (t) => [fx(t), fy(t)]);
}

/**
 * How far a curve between test points may be from the one drawn through them, root mean square, pixels: how far that is
 * from the one that turns only where the points do.
 * Source of the second: F. N. Fritsch & R. E. Carlson, SIAM J. Numerical Analysis 17 (1980) 238–246.
 */
export function doubtBetween(points: readonly Place[]): number {
  const way = wayAlong(points);
  const pairs = [0, 1].map((c) => {
    const values = points.map((p) => p[c]!);
    return [naturalSpline(way, values), monotoneSpline(way, values)] as const;
  });
  const apart = along(way.at(-1)!, (t) => pairs.map(([a, b]) => a(t) - b(t)) as unknown as Place);
  return Math.sqrt(apart.reduce((sum, [dx, dy]) => sum + dx * dx + dy * dy, 0) / apart.length);
}

type Curve = (t: number) => number;

function wayAlong(points: readonly Place[]): number[] {
  let gone = 0;
  return points.map(([x, y], i) => (gone += i ? Math.hypot(x - points[i - 1]![0], y - points[i - 1]![1]) : 0));
}

function along(length: number, at: (t: number) => Place): Place[] {
  const n = Math.max(2, Math.round(length / STEP_PX) + 1);
  return Array.from({ length: n }, (_, i) => at((i / (n - 1)) * length));
}

/** Slopes at the knots by the tridiagonal system of a spline without curvature at its ends. */
function naturalSpline(t: readonly number[], y: readonly number[]): Curve {
  const n = t.length;
  const step = (i: number) => t[i + 1]! - t[i]!;
  const rise = (i: number) => (y[i + 1]! - y[i]!) / step(i);
  const upper = new Float64Array(n);
  const slopes = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const [below, middle, above, right] =
      i === 0
        ? [0, 2, 1, 3 * rise(0)]
        : i === n - 1
          ? [1, 2, 0, 3 * rise(n - 2)]
          : [step(i), 2 * (step(i - 1) + step(i)), step(i - 1), 3 * (step(i) * rise(i - 1) + step(i - 1) * rise(i))];
    const pivot = middle - below * (upper[i - 1] ?? 0);
    upper[i] = above / pivot;
    slopes[i] = (right - below * (slopes[i - 1] ?? 0)) / pivot;
  }
  for (let i = n - 2; i >= 0; i--) slopes[i]! -= upper[i]! * slopes[i + 1]!;
  return hermite(t, y, slopes);
}

function monotoneSpline(t: readonly number[], y: readonly number[]): Curve {
  const n = t.length;
  const step = (i: number) => t[i + 1]! - t[i]!;
  const rise = (i: number) => (y[i + 1]! - y[i]!) / step(i);
  const slopes = t.map((_, i) => {
    if (i === 0 || i === n - 1) return rise(i && i - 1);
    const [a, b] = [rise(i - 1), rise(i)];
    if (a * b <= 0) return 0;
    const [p, q] = [2 * step(i) + step(i - 1), step(i) + 2 * step(i - 1)];
    return (p + q) / (p / a + q / b);
  });
  return hermite(t, y, slopes);
}

function hermite(t: readonly number[], y: readonly number[], slopes: ArrayLike<number>): Curve {
  return (at) => {
    let i = 0;
    while (i < t.length - 2 && at > t[i + 1]!) i++;
    const step = t[i + 1]! - t[i]!;
    const f = (at - t[i]!) / step;
    const g = 1 - f;
    return (
      g * g * (1 + 2 * f) * y[i]! +
      f * f * (3 - 2 * f) * y[i + 1]! +
      step * f * g * (g * slopes[i]! - f * slopes[i + 1]!)
    );
  };
}
