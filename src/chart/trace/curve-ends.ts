import { hiddenAt, likeAt, type Likeness } from './likeness.ts';
import type { Sheet } from '../sheet.ts';
import type { Trace } from './stroke-centre.ts';
import type { TracingTable } from './tracing-table.ts';

/** First (0) or last (1) point of a trace. Source: definition. */
export const endOf = ({ x, y }: Trace, end: 0 | 1) => ({ x: x.at(end ? -1 : 0)!, y: y.at(end ? -1 : 0)! });

/** Whether ink like the curve's own runs on ahead of an end that lies inside the frame. */
export function goesOn({ bounds }: TracingTable, like: Likeness, trace: Trace, end: 0 | 1): boolean {
  const { x, y } = endOf(trace, end);
  const room = 4;
  if (x < bounds.left + room || x > bounds.right - room || y < bounds.top + room || y > bounds.bottom - room)
    return false;
  const back = end ? trace.x.length - 9 : 8;
  const way = Math.atan2(y - trace.y[Math.max(0, back)]!, x - trace.x[Math.max(0, back)]!);
  for (let turn = -1.25; turn <= 1.3; turn += 0.125) {
    const inked = inkAhead(like, x, y, way + turn, NEXT_PX);
    // a marker at the end is no line that goes on
    if (inked !== null && inked > 0.45 && (inkAhead(like, x, y, way + turn, BEYOND_PX) ?? 1) > 0.2) return true;
  }
  return false;
}

/** Stretches ahead of an end that are looked at for print, sheet pixels: what comes next, and beyond a marker. */
const NEXT_PX = [7, 25] as const;
const BEYOND_PX = [16, 34] as const;

/** Mean likeness to the curve's ink along a way, 0..1; null where too much of it is hidden. */
function inkAhead(
  like: Likeness,
  x: number,
  y: number,
  angle: number,
  [from, to]: readonly [number, number],
): number | null {
  let ink = 0;
  let looks = 0;
  for (let far = from; far < to; far++) {
    const [px, py] = [x + far * Math.cos(angle), y + far * Math.sin(angle)];
    if (hiddenAt(like, px, py)) continue;
    ink += likeAt(like, px, py);
    looks++;
  }
  return looks > (to - from) / 2 ? ink / looks : null;
}

/**
 * A curve that ran into the frame line ends on it, not the line's half width before it.
 * @param further how much further off the frame may be at either end, sheet pixels
 */
export function toFrameSides(
  { sheet, frameHalf, bounds }: TracingTable,
  trace: Trace,
  further: (end: 0 | 1) => number = () => 0,
): Trace {
  const clear = (i: number) =>
    trace.x[i]! >= bounds.left &&
    trace.x[i]! <= bounds.right &&
    trace.y[i]! >= bounds.top &&
    trace.y[i]! <= bounds.bottom;
  let first = 0;
  let last = trace.x.length - 1;
  while (first < last - 4 && !clear(first)) first++;
  while (last > first + 4 && !clear(last)) last--;
  const x = Array.from(trace.x.subarray(first, last + 1));
  const y = Array.from(trace.y.subarray(first, last + 1));
  const seen = Array.from(trace.seen.subarray(first, last + 1));
  const near = (k: 0 | 1): number => frameHalf + NEAR_PX + further(k);
  const end = onSide(sheet, near(1), x.at(-1)!, y.at(-1)!, x.at(-1)! - x.at(-9)!, y.at(-1)! - y.at(-9)!);
  const start = onSide(sheet, near(0), x[0]!, y[0]!, x[0]! - x[8]!, y[0]! - y[8]!);
  if (end) {
    x.push(end[0]);
    y.push(end[1]);
    seen.push(0.5);
  }
  if (start) {
    x.unshift(start[0]);
    y.unshift(start[1]);
    seen.unshift(0.5);
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y), seen: Float64Array.from(seen) };
}

/** So near to the frame a solid line is seen on until it is lost in the frame's own. */
const NEAR_PX = 8;

/** Where the straight way on from (x, y) meets the frame, if that is just ahead. */
function onSide(sheet: Sheet, near: number, x: number, y: number, dx: number, dy: number): [number, number] | null {
  const left = sheet.margin;
  const top = sheet.margin;
  const goX = dx < 0 ? (left - x) / dx : dx > 0 ? (left + sheet.frameWidth - x) / dx : Infinity;
  const goY = dy < 0 ? (top - y) / dy : dy > 0 ? (top + sheet.frameHeight - y) / dy : Infinity;
  const go = Math.min(goX, goY);
  const across = goX < goY ? Math.abs(go * dx) : Math.abs(go * dy);
  if (!(go >= 0) || across > near || go * Math.hypot(dx, dy) > 2.5 * near) return null;
  return [x + go * dx, y + go * dy];
}
