import { meetings } from '../trace/untangle.ts';
import type { TracedCurve } from '../trace/trace.ts';
import type { Changes } from './steadiness.ts';

/** A fork so near to a crossing is that crossing, sheet pixels. */
const NEAR_PX = 16;
/** Lines that cross at less than about a fifth of a right angle run side by side for more points than these. */
const LONGEST_MEETING = 14;
/** A line that changes no more than this is the same on both sides of every crossing; see `Changes`. */
const STEADY = { dashes: 0.35, strength: 0.45, colour: 0.15, course: 0.4 } as const;

type Line = TracedCurve & { readonly changes: Changes };

/**
 * Whether the other way a line might have gone at a place is another line of the chart that it crosses there: it runs
 * straight on in the same print, and the other has a course of its own.
 * @param others the other lines that were found
 */
export function runsStraightThrough(
  line: Line,
  others: readonly TracedCurve[],
  at: { readonly x: number; readonly y: number },
): boolean {
  const { dashes, strength, colour, course } = line.changes;
  if (dashes > STEADY.dashes || strength > STEADY.strength || colour > STEADY.colour || course > STEADY.course)
    return false;
  return others.some((other) =>
    meetings(line, other).some(({ a: [first, last] }) => {
      const middle = (first + last) >> 1;
      const { x, y } = line.trace;
      return last - first < LONGEST_MEETING && Math.hypot(x[middle]! - at.x, y[middle]! - at.y) < NEAR_PX;
    }),
  );
}
