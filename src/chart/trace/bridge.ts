/** Points looked at on both sides of a gap (2.5 sheet pixels apart), and those next to it that a label may have touched. */
const LOOK = 22;
const TOUCHED = 5;
const SHORTEST = 8;

/**
 * Bridges the stretches of a curve that could not be seen, in place: a cubic from the course before to the course
 * after, each taken from a good stretch of seen points and not from the very edge of the gap.
 * @param hidden 1 where nothing was seen
 * Source: cubic Hermite interpolation between the two ends' positions and tangents.
 */
export function bridgeGaps(x: Float64Array, y: Float64Array, hidden: Uint8Array): void {
  for (let i = 0; i < x.length;) {
    let j = i;
    while (j < x.length && hidden[j]) j++;
    if (j - i >= SHORTEST && i > LOOK && j < x.length - LOOK) {
      const from = Math.max(0, i - TOUCHED);
      const to = Math.min(x.length - 1, j - 1 + TOUCHED);
      for (const values of [x, y])
        hermite(values, from, to, slopeAt(values, from, -1, hidden), slopeAt(values, to, 1, hidden));
    }
    i = Math.max(j, i + 1);
  }
}

function hermite(values: Float64Array, from: number, to: number, slopeFrom: number, slopeTo: number): void {
  const n = to - from;
  const a = values[from]!;
  const b = values[to]!;
  for (let k = 1; k < n; k++) {
    const t = k / n;
    const s = 1 - t;
    values[from + k] =
      s * s * (1 + 2 * t) * a + t * t * (3 - 2 * t) * b + n * (t * s * s * slopeFrom - t * t * s * slopeTo);
  }
}

/** Slope a point at one end of a seen stretch, from a parabola through the points that lead there. */
function slopeAt(values: Float64Array, at: number, away: 1 | -1, hidden: Uint8Array): number {
  let s0 = 0,
    s1 = 0,
    s2 = 0,
    s3 = 0,
    s4 = 0,
    t0 = 0,
    t1 = 0,
    t2 = 0;
  for (let k = 0; k < LOOK; k++) {
    const i = at + away * k;
    if (i < 0 || i >= values.length || hidden[i]) break;
    const u = away * k;
    const v = values[i]! - values[at]!;
    s0++;
    s1 += u;
    s2 += u * u;
    s3 += u ** 3;
    s4 += u ** 4;
    t0 += v;
    t1 += u * v;
    t2 += u * u * v;
  }
  const m1 = s2 * s4 - s3 * s3;
  const m2 = s1 * s4 - s2 * s3;
  const m3 = s1 * s3 - s2 * s2;
  const det = s0 * m1 - s1 * m2 + s2 * m3;
  if (!(Math.abs(det) > 1e-9)) return s2 > 0 ? t1 / s2 : 0;
  return (s0 * (t1 * s4 - s3 * t2) - t0 * m2 + s2 * (s1 * t2 - t1 * s2)) / det;
}
