import type { Grey } from '../../picture/raster.ts';
import { acrossAt, lengthOf, type PageLine } from '../../picture/lines/page-lines.ts';

/** How far from where the grid ends the edge of its panel is looked for, view pixels and share of the side. */
const REACH_PX = 6;
const REACH_SHARE = 0.02;
/** Brightness on either side is the mean over so many pixels; a finer line than that is no panel's edge. */
const DEEP_PX = 4;
/** Places along a side where it is looked for, and how many of them must agree to within so many pixels. */
const LOOKS = 32;
const LEAST_SEEN = 0.6;
const NEAR_PX = 1.5;
/** The panel differs from the paper by this share of its brightness, and by no more than a sheet from a table. */
const LEAST_STEP = 0.02;
const LARGEST_STEP = 0.45;

/**
 * The edge of a tinted panel near where a grid ends: brighter or darker beyond than within, all along.
 * @param end where the lines of the grid end; its span along is known from them
 * @returns a side like a printed one, `cover` the share of it that was seen; null where there is no such edge
 * Source of the fit: Theil–Sen estimator, Sankhya 12 (1950) 85 and JASA 63 (1968) 1379.
 */
export function tintEdge(grey: Grey, end: PageLine): PageLine | null {
  const length = lengthOf(end);
  const reach = Math.round(REACH_PX + REACH_SHARE * length);
  const steps = Array.from({ length: LOOKS }, (_, k) => {
    const along = end.from + ((k + 0.5) / LOOKS) * length;
    return stepNear(grey, end.upright, along, acrossAt(end, along), reach);
  }).filter((s) => s !== null);
  const brighter = steps.filter((s) => s.step > 0);
  const some = 2 * brighter.length > steps.length ? brighter : steps.filter((s) => s.step < 0);
  if (some.length < LEAST_SEEN * LOOKS) return null;
  const slope = median(
    some.flatMap((a, i) =>
      some.slice(i + 1).flatMap((b) => (b.along - a.along > length / 4 ? [(b.at - a.at) / (b.along - a.along)] : [])),
    ),
  );
  const middle = (end.from + end.to) / 2;
  const across = median(some.map(({ along, at }) => at - slope * (along - middle)));
  const seen = some.filter(({ along, at }) => Math.abs(at - across - slope * (along - middle)) < NEAR_PX);
  if (seen.length < LEAST_SEEN * LOOKS) return null;
  return { ...end, middle, c: [across, slope, 0], strength: 0, cover: seen.length / LOOKS };
}

/** The strongest change of brightness across a line, and where it is; null where nothing changes enough. */
function stepNear({ width, height, data }: Grey, upright: boolean, along: number, near: number, reach: number) {
  const deep = reach + DEEP_PX;
  const [size, most] = upright ? [width, height] : [height, width];
  const [first, row] = [Math.round(near) - deep, Math.round(along)];
  if (row < 1 || row >= most - 1 || first < 0 || first + 2 * deep >= size) return null;
  const profile = Array.from({ length: 2 * deep + 1 }, (_, k) => {
    let sum = 0;
    for (let d = -1; d <= 1; d++)
      sum += upright ? data[(row + d) * width + first + k]! : data[(first + k) * width + row + d]!;
    return sum / 3;
  });
  let best: { along: number; at: number; step: number } | null = null;
  for (let k = DEEP_PX; k + DEEP_PX < profile.length; k++) {
    // lines are finer than half of what is looked at
    const before = median(profile.slice(k - DEEP_PX, k));
    const after = median(profile.slice(k + 1, k + 1 + DEEP_PX));
    const step = (after - before) / Math.max(before, after);
    if (Math.abs(step) < LEAST_STEP || Math.abs(step) > LARGEST_STEP) continue;
    if (!best || Math.abs(step) > Math.abs(best.step)) best = { along, at: first + k, step };
  }
  return best;
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
}
