import { blurred, fieldLike, quantile, type Field } from '../crop/filters.ts';
import { findPieces } from '../ink/pieces.ts';
import type { View } from './view.ts';

type Xy = readonly [number, number];

/** A connected region: the corners of its convex hull in order, its share of the hull's area. */
export type Region = { readonly hull: readonly Xy[]; readonly area: number; readonly hullArea: number };

const LEAST_AREA = 0.04;
const MOST_CORNERS = 28;
/** Thresholds stand at these shares of all pixels: a plate may be a small or a large part of its photo. */
const SHARES = [0.12, 0.25, 0.4, 0.55, 0.7, 0.85];

/** Regions that stand out by brightness, by colour, or by being like what the middle of the photo shows. */
export function standingOut(view: View): Region[] {
  return measuresOf(view).flatMap((measure) => {
    const soft = blurred(measure, 1);
    const some = soft.values.filter((_, k) => k % 11 === 0).sort();
    return SHARES.flatMap((share) => {
      const limit = some[Math.floor(share * some.length)]!;
      return [1, -1].flatMap((sign) => regionsOf(soft, sign, limit));
    });
  });
}

function measuresOf({ width, height, colours: [r, g, b] }: View): Field[] {
  const like = { width, height, values: r };
  const middle = [r, g, b].map((c) => middleOf(c, width, height));
  return [
    fieldLike(like, (k) => (r[k]! + g[k]! + b[k]!) / 3),
    fieldLike(like, (k) => r[k]! - g[k]!),
    fieldLike(like, (k) => (r[k]! + g[k]!) / 2 - b[k]!),
    fieldLike(like, (k) => Math.hypot(r[k]! - middle[0]!, g[k]! - middle[1]!, b[k]! - middle[2]!)),
  ];
}

/** Median over the middle ninth. */
function middleOf(colour: Float32Array, width: number, height: number): number {
  const some: number[] = [];
  for (let y = Math.floor(height / 3); y < (2 * height) / 3; y++)
    for (let x = Math.floor(width / 3); x < (2 * width) / 3; x++) some.push(colour[y * width + x]!);
  return quantile(Float32Array.from(some), 0.5);
}

/** Connected regions that are large enough for a plate. */
function regionsOf({ width, height, values }: Field, sign: number, limit: number): Region[] {
  const mask = new Uint8Array(values.length);
  for (let k = 0; k < mask.length; k++) if (sign * (values[k]! - limit) > 0) mask[k] = 1;
  const { list, labels } = findPieces({ width, height, mask, edge: values, deviation: values });
  return list
    .filter(({ area }) => area >= LEAST_AREA * values.length)
    .map(({ id, area, y0, y1 }) => {
      const ends: Xy[] = [];
      for (let y = y0; y < y1; y++) {
        const row = labels.subarray(y * width, (y + 1) * width);
        const [left, right] = [row.indexOf(id), row.lastIndexOf(id) + 1];
        if (right) ends.push([left, y], [right, y], [left, y + 1], [right, y + 1]);
      }
      const hull = fewer(hullOf(ends), MOST_CORNERS);
      return { hull, area, hullArea: areaOf(hull) };
    });
}

/** Convex hull, clockwise as seen with y down. Source: A. M. Andrew, Inf. Process. Lett. 9 (1979) 216. */
function hullOf(points: readonly Xy[]): Xy[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (some: readonly Xy[]) => {
    const out: Xy[] = [];
    for (const p of some) {
      while (out.length > 1 && turn(out.at(-2)!, out.at(-1)!, p) <= 0) out.pop();
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** Leaves out corners that stand out least until few enough are left. */
function fewer(hull: Xy[], most: number): Xy[] {
  const left = [...hull];
  while (left.length > most) {
    const n = left.length;
    const loss = left.map((p, i) => Math.abs(turn(left[(i + n - 1) % n]!, p, left[(i + 1) % n]!)));
    left.splice(loss.indexOf(Math.min(...loss)), 1);
  }
  return left;
}

const turn = (a: Xy, b: Xy, c: Xy) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Area of a polygon whose corners run clockwise with y down. */
export const areaOf = (polygon: readonly Xy[]): number =>
  polygon.reduce((s, [x, y], i) => {
    const [u, v] = polygon[(i + 1) % polygon.length]!;
    return s + x * v - u * y;
  }, 0) / 2;

/** The largest quadrilateral with its corners on a hull, clockwise; null for a hull of fewer than four corners. */
export function quadIn(hull: readonly Xy[]): [Xy, Xy, Xy, Xy] | null {
  const n = hull.length;
  if (n < 4) return null;
  // for each diagonal the farthest corner on either side
  let [best, quad] = [0, null as [Xy, Xy, Xy, Xy] | null];
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      const [a, c] = [hull[i]!, hull[j]!];
      let [mostRight, mostLeft, b, d] = [0, 0, a, a];
      for (let k = i + 1; k < j; k++) {
        const t = Math.abs(turn(a, c, hull[k]!));
        if (t > mostRight) [mostRight, b] = [t, hull[k]!];
      }
      for (let k = j + 1; k < n + i; k++) {
        const t = Math.abs(turn(a, c, hull[k % n]!));
        if (t > mostLeft) [mostLeft, d] = [t, hull[k % n]!];
      }
      if (mostRight && mostLeft && mostRight + mostLeft > best) [best, quad] = [mostRight + mostLeft, [a, b, c, d]];
    }
  return quad;
}
