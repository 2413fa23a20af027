import { greyAt, type Photo } from '../../picture/raster.ts';
import type { SideAxis } from './side-band.ts';
import { fitSmoothLine, type SmoothLine } from '../trace/smooth-line.ts';

/** A side without a line, seen only by the grid lines that all end there. */
export type SideComb = { readonly line: SmoothLine; readonly middle_px: number; readonly teeth: number };

const FEWEST_TEETH = 3;

/**
 * Where the grid lines that run towards a side stop, as a smooth line through their ends.
 * @param outside 1 or −1: on which hand of the strip's direction the frame's outside lies
 * @param mayMiss_px how far the side may lie from the line between its rough corners
 * @returns null where fewer than three lines end about there
 */
export function findSideComb(photo: Photo, axis: SideAxis, outside: 1 | -1, mayMiss_px: number): SideComb | null {
  const inside_px = 30;
  const lines = linesAcross(photo, axis, () => 0, -outside * mayMiss_px, -outside * (mayMiss_px + inside_px));
  if (lines.length < FEWEST_TEETH) return null;
  const ends = lines
    .map((t) => ({ t, s: endOf(photo, axis, outside, t, mayMiss_px, inside_px) }))
    .filter((e) => e.s !== null) as { t: number; s: number }[];
  if (ends.length < FEWEST_TEETH) return null;
  // ends agree on one straight or slightly bent line: a line that runs on, or a curve, does not
  const line = fitSmoothLine(
    ends.map((e) => e.t),
    ends.map((e) => e.s),
    ends.map(() => 1),
    { from: -40, to: axis.length_px + 40, intervals: 3, stiffness: [0.05], reach: 2.5 },
  );
  const straight = line ?? straightThrough(ends, axis.length_px);
  const agreeing = ends.filter((e) => Math.abs(e.s - straight.value(e.t)) < 2.5).length;
  if (agreeing < Math.max(FEWEST_TEETH, 0.6 * lines.length)) return null;
  return { line: straight, middle_px: straight.value(axis.length_px / 2), teeth: agreeing };
}

/** Three ends are too few for a spline: their middle, and a slope through the outer two. */
function straightThrough(ends: { t: number; s: number }[], length_px: number): SmoothLine {
  const n = ends.length;
  const mt = ends.reduce((sum, e) => sum + e.t, 0) / n;
  const ms = ends.reduce((sum, e) => sum + e.s, 0) / n;
  const spread = ends.reduce((sum, e) => sum + (e.t - mt) ** 2, 0);
  const slope =
    spread > (0.1 * length_px) ** 2 ? ends.reduce((sum, e) => sum + (e.t - mt) * (e.s - ms), 0) / spread : 0;
  return { value: (t) => ms + slope * (t - mt), slope: () => slope, residual: 1, believed: 1 };
}

const at = (photo: Photo, { start, along, across }: SideAxis, t: number, s: number) =>
  greyAt(photo.grey, start[0] + along[0] * t + across[0] * s, start[1] + along[1] * t + across[1] * s);

/** Places along the side where lines cross a strip parallel to it, `from` to `to` pixels across (signed as the axis is). */
function linesAcross(photo: Photo, axis: SideAxis, course: (t: number) => number, from: number, to: number): number[] {
  const n = Math.floor(axis.length_px) + 41;
  const looks = Math.max(6, Math.round(Math.abs(to - from) / 1.5));
  const profile = new Float32Array(n);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < looks; k++)
      profile[i]! += at(photo, axis, i - 20, course(i - 20) + from + ((k + 0.5) / looks) * (to - from)) / looks;
  const ridge = new Float32Array(n);
  for (let i = 6; i < n - 6; i++) {
    const middle = (profile[i - 1]! + 2 * profile[i]! + profile[i + 1]!) / 4;
    const before = (profile[i - 5]! + profile[i - 4]!) / 2;
    const after = (profile[i + 5]! + profile[i + 4]!) / 2;
    ridge[i] = Math.max(Math.min(before, after) - middle, middle - Math.max(before, after), 0);
  }
  const sorted = Array.from(ridge).sort((a, b) => a - b);
  const threshold = Math.max(2, 4.5 * sorted[Math.floor(0.6 * n)]!);
  const places: number[] = [];
  for (let i = 6; i < n - 6; i++)
    if (
      ridge[i]! > threshold &&
      ridge[i]! >= ridge[i - 1]! &&
      ridge[i]! > ridge[i + 1]! &&
      i - 20 - (places.at(-1) ?? -99) > 5
    )
      places.push(i - 20);
  return places;
}

/**
 * Whether most of the grid lines that meet a line go on well beyond it: then it is no side of the frame.
 * Ticks end sooner; labels stand where the frame's line is dark, so this is asked of faint lines only.
 */
export function isCrossed(photo: Photo, axis: SideAxis, course: SmoothLine, outside: 1 | -1): boolean {
  const within = linesAcross(photo, axis, course.value, -outside * 8, -outside * 28);
  const beyond = linesAcross(photo, axis, course.value, outside * 16, outside * 28);
  const going = within.filter((t) => beyond.some((b) => Math.abs(b - t) < 4)).length;
  return within.length >= FEWEST_TEETH && going >= 0.5 * within.length;
}

/** Where the line that comes in at `t` stops: followed outwards, half way down its last fall; null if it runs through. */
function endOf(
  photo: Photo,
  axis: SideAxis,
  outside: 1 | -1,
  t: number,
  mayMiss_px: number,
  inside_px: number,
): number | null {
  const from = -(mayMiss_px + inside_px / 2);
  const to = mayMiss_px + WINDOW + 4;
  const depths: number[] = [];
  let middle = t;
  for (let s = from; s <= to; s++) {
    const cross = (shift: number) =>
      (at(photo, axis, middle + shift - 1, outside * s) +
        2 * at(photo, axis, middle + shift, outside * s) +
        at(photo, axis, middle + shift + 1, outside * s)) /
      4;
    const before = (cross(-5) + cross(-6)) / 2;
    const after = (cross(5) + cross(6)) / 2;
    const paper = (before + after) / 2;
    let best = 0;
    let bestShift = 0;
    for (let shift = -2; shift <= 2; shift++) {
      const depth = Math.abs(cross(shift) - paper) - 0.5 * Math.abs(before - after);
      if (depth > best) {
        best = depth;
        bestShift = shift;
      }
    }
    depths.push(best);
    // the line may run a little askew to the strip
    middle += 0.2 * bestShift;
  }
  const usual = mean(depths, 0, Math.floor(inside_px / 2));
  if (!(usual > 1.5)) return null;
  const end = firstEnd(depths, usual, inside_px / 2) ?? largestFall(depths, usual);
  return end === null ? null : outside * (from + end - 0.5);
}

/** The first place where a line that was unbroken so far stops: a label may begin right behind it. */
function firstEnd(depths: readonly number[], usual: number, inside: number): number | null {
  const isGone = (i: number) => mean(depths, i, i + SHORT_WINDOW) < 0.35 * usual;
  for (let i = 0; i < inside - SHORT_WINDOW; i++) if (isGone(i)) return null;
  for (let i = WINDOW; i < depths.length - SHORT_WINDOW; i++)
    if (isGone(i)) {
      // to where it is half gone
      let k = Math.max(WINDOW, i - 3);
      while (k < i + SHORT_WINDOW && depths[k]! + depths[k + 1]! > usual) k++;
      return mean(depths, k - WINDOW, k) > 0.6 * usual ? k + 0.5 : null;
    }
  return null;
}

/** Where a dashed line stops: the place with the largest difference between before and behind. */
function largestFall(depths: readonly number[], usual: number): number | null {
  let best = { fall: 0, at: 0 };
  for (let i = WINDOW; i < depths.length - WINDOW; i++) {
    const fall = mean(depths, i - WINDOW, i) - mean(depths, i, i + WINDOW);
    if (fall > best.fall) best = { fall, at: i };
  }
  return best.fall > 0.5 * usual ? best.at : null;
}

/** Pixels along a line over which it must be seen, then not seen. */
const WINDOW = 12;
const SHORT_WINDOW = 6;

const mean = (values: readonly number[], from: number, to: number): number => {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum / (to - from);
};
