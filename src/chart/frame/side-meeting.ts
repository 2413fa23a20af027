import { greyAt, type Photo } from '../../picture/raster.ts';
import type { Polarity, SideAxis } from './side-band.ts';
import type { SmoothLine } from '../trace/smooth-line.ts';

/** A line along a side, as it runs in the photo. */
export type Course = { readonly axis: SideAxis; readonly course: SmoothLine };

/** Shorter ways between two lines are a frame's double line or its own thickness. */
const LEAST_WAY_PX = 8;
/** Print that is this share as strong as inside the frame still is the same line. */
const STILL_THERE = 0.4;
const INSIDE_PX = 60;

/**
 * Whether a side's line runs on from one line that meets it to another one further out: the outer line then belongs to
 * the same frame. Where it stops at the first, the other one is a neighbour's, a table's or the edge of the paper.
 * @param inner,outer where the two lines meet the side, photo pixels
 * @param inwards +1 where the frame's inside lies at greater distances along the side, −1 where at smaller ones
 * @returns null where that cannot be seen
 */
export function runsOn(
  photo: Photo,
  side: Course,
  inner: readonly [number, number],
  outer: readonly [number, number],
  inwards: 1 | -1,
  polarity: Polarity,
): boolean | null {
  const { axis } = side;
  const along = ([x, y]: readonly [number, number]) =>
    (x - axis.start[0]) * axis.along[0] + (y - axis.start[1]) * axis.along[1];
  const [from, to] = [along(outer), along(inner)];
  if (inwards * (to - from) < LEAST_WAY_PX) return null;
  const trim = 0.25 * (to - from);
  const between = meanDepth(photo, side, from + trim, to - trim, polarity);
  const inside = meanDepth(photo, side, to + 6 * inwards, to + INSIDE_PX * inwards, polarity);
  return inside < LEAST_DEPTH ? null : between > STILL_THERE * inside;
}

const LEAST_DEPTH = 6;

/** How much darker (or lighter) than both its sides the line is between two places along it, mean grey levels. */
function meanDepth(photo: Photo, { axis, course }: Course, from: number, to: number, polarity: Polarity): number {
  const sign = polarity === 'dark' ? 1 : -1;
  const steps = Math.max(4, Math.round(Math.abs(to - from)));
  let sum = 0;
  for (let k = 0; k <= steps; k++) {
    const t = from + ((to - from) * k) / steps;
    const s = course.value(t);
    const at = (d: number) =>
      greyAt(
        photo.grey,
        axis.start[0] + axis.along[0] * t + axis.across[0] * (s + d),
        axis.start[1] + axis.along[1] * t + axis.across[1] * (s + d),
      );
    const middle = [-2, -1, 0, 1].map((d) => sign * (at(d) + at(d + 1)) * 0.5).reduce((m, v) => Math.min(m, v));
    const beside = Math.min(sign * (at(-6) + at(-7)), sign * (at(6) + at(7))) / 2;
    sum += Math.max(0, beside - middle);
  }
  return sum / (steps + 1);
}
