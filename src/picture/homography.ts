/** A projective map of the plane, 3 × 3 row by row, last entry 1 unless it was inverted. */
export type Homography = Float64Array;

type Xy = readonly [number, number];

/**
 * The projective map that takes four points to four others.
 * @param from,to four points each, no three on one line
 * @returns null where three of the points lie on one line
 * Source: R. Hartley & A. Zisserman, Multiple View Geometry (2nd ed. 2004) §4.1, inhomogeneous solution.
 */
export function homographyOf(from: readonly Xy[], to: readonly Xy[]): Homography | null {
  if (from.length !== 4 || to.length !== 4)
    throw new RangeError(`homography: expected four points each, received ${from.length} and ${to.length}`);
  const rows: number[][] = [];
  for (let i = 0; i < 4; i++) {
    const [x, y] = from[i]!;
    const [u, v] = to[i]!;
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u], [0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  }
  const solved = eliminate(rows);
  if (!solved) return null;
  const h = Float64Array.from([...solved, 1]);
  return Math.abs(determinant(h)) > 1e-9 * h.reduce((s, v) => s + v * v, 0) ? h : null;
}

const determinant = (h: Homography): number =>
  h[0]! * (h[4]! * h[8]! - h[5]! * h[7]!) -
  h[1]! * (h[3]! * h[8]! - h[5]! * h[6]!) +
  h[2]! * (h[3]! * h[7]! - h[4]! * h[6]!);

/** Gauss elimination with row exchange on an n × (n+1) table; null where it has no single solution. */
function eliminate(rows: number[][]): number[] | null {
  const n = rows.length;
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[best]![c]!)) best = r;
    const pivot = rows[best]!;
    if (Math.abs(pivot[c]!) < 1e-12) return null;
    rows[best] = rows[c]!;
    rows[c] = pivot;
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const f = rows[r]![c]! / pivot[c]!;
      if (f !== 0) for (let k = c; k <= n; k++) rows[r]![k]! -= f * pivot[k]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
}

/** The map that undoes `h` (its adjugate; the scale of a projective map does not matter). */
export function inverseOf(h: Homography): Homography {
  const [a, b, c, d, e, f, g, i, j] = h as unknown as number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return Float64Array.from([
    e * j - f * i,
    c * i - b * j,
    b * f - c * e,
    f * g - d * j,
    a * j - c * g,
    c * d - a * f,
    d * i - e * g,
    b * g - a * i,
    a * e - b * d,
  ]);
}

/** Where `h` takes (x, y). */
export function project(h: Homography, x: number, y: number): [number, number] {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return [(h[0]! * x + h[1]! * y + h[2]!) / w, (h[3]! * x + h[4]! * y + h[5]!) / w];
}
