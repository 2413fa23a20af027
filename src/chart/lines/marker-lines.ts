import { traceMarkers } from '../trace/trace-markers.ts';
import { toFrameSides } from '../trace/curve-ends.ts';
import type { TracedCurve } from '../trace/trace.ts';
import type { TracingTable } from '../trace/tracing-table.ts';
import { inkOf, type InkIsland } from './ink-islands.ts';

const SMALLEST_PX = 5;
const LARGEST_PX = 34;
/** Fewer markers in a row may be anything. */
const LEAST_MARKERS = 5;
const LEAST_ACROSS = 0.25;
/** A curve has test points all along: the first few islands that are none tell that there is no such curve. */
const MOST_TRIES = 10;
/** Markers along a printed line belong to it. */
const BESIDE_PX = 12;

/**
 * Curves that are printed as separate markers, without a line.
 * @param islands small pieces of ink that are no letters
 * @param lines lines found before: what lies on them is theirs
 */
export function markerLines(
  table: TracingTable,
  islands: readonly InkIsland[],
  lines: readonly TracedCurve[],
): TracedCurve[] {
  const { sheet, grid, frameHalf } = table;
  const loose = islands.filter((i) => isMarkerLike(i) && !lines.some((l) => distanceTo(l, ...middleOf(i)) < BESIDE_PX));
  if (loose.length < LEAST_MARKERS) return [];
  const found: TracedCurve[] = [];
  const used: (readonly [number, number])[] = [];
  let tries = 0;
  for (const island of fromTheMiddle(loose, sheet.margin + sheet.frameWidth / 2)) {
    const [x, y] = middleOf(island);
    if (used.some(([ux, uy]) => Math.hypot(ux - x, uy - y) < LARGEST_PX / 2)) continue;
    if (tries++ >= MOST_TRIES) break;
    const row = traceMarkers(sheet, grid, x, y, 2, frameHalf);
    if (!row || row.markers.length < LEAST_MARKERS) continue;
    // on noise and letters a chain of look-alikes can be found too: markers are islands
    const free = row.markers.filter(([mx, my]) => loose.some((l) => near(middleOf(l), mx, my)));
    if (free.length < MOSTLY * row.markers.length) continue;
    const curve: TracedCurve = {
      trace: toFrameSides(table, row.trace),
      drawn: 'markers',
      colour: inkOf(sheet, island),
      width: 2,
      doubts: [],
      looseEnds: [...row.looseEnds, ...endsWithMore(row.markers, loose, sheet.frameWidth)],
      doubt_px: row.doubt_px,
    };
    if (Math.abs(curve.trace.x.at(-1)! - curve.trace.x[0]!) < LEAST_ACROSS * sheet.frameWidth) continue;
    if (row.markers.filter(([mx, my]) => used.some(([ux, uy]) => Math.hypot(ux - mx, uy - my) < 6)).length > 2)
      continue;
    used.push(...row.markers);
    found.push(curve);
  }
  return found;
}

/** Ends of a row beyond which another piece of ink of marker's size lies in its direction: the row may go on. */
function endsWithMore(
  row: readonly (readonly [number, number])[],
  loose: readonly InkIsland[],
  frameWidth: number,
): { x: number; y: number }[] {
  const ends = [
    [row[0]!, row[1]!],
    [row.at(-1)!, row.at(-2)!],
  ] as const;
  return ends.flatMap(([[x, y], [bx, by]]) => {
    const way = Math.atan2(y - by, x - bx);
    const goesOn = loose.some((l) => {
      const [mx, my] = middleOf(l);
      const far = Math.hypot(mx - x, my - y);
      const off = Math.atan2(my - y, mx - x) - way;
      return far > 8 && far < 0.25 * frameWidth && Math.abs(Math.atan2(Math.sin(off), Math.cos(off))) < 0.8;
    });
    return goesOn ? [{ x, y }] : [];
  });
}

const MOSTLY = 0.7;
const near = ([x, y]: readonly [number, number], mx: number, my: number) => Math.hypot(x - mx, y - my) < 6;
const middleOf = (i: InkIsland): [number, number] => [(i.left + i.right) / 2, (i.top + i.bottom) / 2];

function isMarkerLike({ left, right, top, bottom }: InkIsland): boolean {
  const w = right - left + 1;
  const h = bottom - top + 1;
  return Math.min(w, h) >= SMALLEST_PX && Math.max(w, h) <= LARGEST_PX && Math.max(w, h) <= 1.5 * Math.min(w, h) + 1;
}

/** Legends and axis labels stand at the sides. */
const fromTheMiddle = (islands: readonly InkIsland[], x: number) =>
  [...islands].sort((a, b) => Math.abs(middleOf(a)[0] - x) - Math.abs(middleOf(b)[0] - x));

function distanceTo({ trace }: TracedCurve, x: number, y: number): number {
  let least = Infinity;
  for (let i = 0; i < trace.x.length; i++) least = Math.min(least, Math.hypot(trace.x[i]! - x, trace.y[i]! - y));
  return least;
}
