import { lengthOf, type PageLine } from '../../picture/lines/page-lines.ts';

/** How fast the slope of lines of one direction changes from one to the next in perspective, per pixel across them. */
export type Lean = { readonly upright: number; readonly level: number };

/** How the lines of each direction lean over the photo. */
export const pageLean = (lines: readonly PageLine[]): Lean => ({
  upright: changeOf(lines.filter((l) => l.upright)),
  level: changeOf(lines.filter((l) => !l.upright)),
});

/** Perspective within 25° of upright turns lines no faster than this over a photo's width of 1000. */
const FASTEST_CHANGE = 6e-4;

/**
 * Change of slope, by a robust straight line through slope over place.
 * Lines that lean otherwise (curves, drawings) count little: they bow, and stand off the rest.
 */
function changeOf(lines: readonly PageLine[]): number {
  const samples = lines
    .toSorted((a, b) => lengthOf(b) - lengthOf(a))
    .slice(0, 60)
    .map((l) => {
      const bow = (l.c[2] * lengthOf(l)) / 8 / 0.01;
      return { across: l.c[0], slope: l.c[1], weight: lengthOf(l) ** 2 * Math.exp(-bow * bow) };
    });
  if (samples.length < 3) return 0;
  let base = 0;
  let change = 0;
  let limit = Infinity;
  for (let round = 0; round < 6; round++) {
    let [w, sx, sy, sxx, sxy] = [0, 0, 0, 0, 0];
    for (const { across, slope, weight } of samples) {
      const off = Math.abs(slope - base - change * across);
      const k = limit === Infinity ? weight : weight / (1 + (off / limit) ** 2);
      w += k;
      sx += k * across;
      sy += k * slope;
      sxx += k * across * across;
      sxy += k * across * slope;
    }
    const det = w * sxx - sx * sx;
    change = det > 1e-6 * w * sxx ? (w * sxy - sx * sy) / det : 0;
    base = (sy - change * sx) / w;
    limit = round < 2 ? 0.08 : 0.02;
  }
  return Math.abs(change) <= FASTEST_CHANGE ? change : 0;
}
