import { followStroke, type Followed } from './follow.ts';
import type { StrokeStep } from './foresee.ts';
import { frameHalfWidth } from './frame-lines.ts';
import type { GridInk } from './grid-ink.ts';
import { likeAt, likenessTo, type InkColour, type Likeness } from './likeness.ts';
import { strokeNear } from './seed-stroke.ts';
import type { Sheet } from './sheet.ts';
import { centreOfStroke, type Trace } from './stroke-centre.ts';
import { SOLID, styleAlong } from './stroke-style.ts';
import { traceMarkers } from './trace-markers.ts';
import type { Bounds } from './ways-on.ts';

/** A curve found from one tap. */
export type TracedCurve = {
  readonly trace: Trace;
  readonly drawn: 'line' | 'markers';
  readonly colour: InkColour;
  readonly width: number;
  /** places where another way was nearly as good */
  readonly doubts: readonly { readonly x: number; readonly y: number }[];
  /** ends of the trace beyond which a line seems to go on */
  readonly looseEnds: readonly { readonly x: number; readonly y: number }[];
  /** markers: how far they scatter about the curve, sheet pixels; lines: 0 */
  readonly scatter_px: number;
};

/** What all curves of one chart share while they are traced. */
export type TracingTable = {
  readonly sheet: Sheet;
  readonly grid: GridInk;
  readonly frameHalf: number;
  readonly bounds: Bounds;
  readonly likenesses: { colour: InkColour; likeness: Likeness }[];
};

export function tracingTable(sheet: Sheet, grid: GridInk): TracingTable {
  const frameHalf = frameHalfWidth(sheet);
  const clear = frameHalf + 1.5;
  const bounds = {
    left: sheet.margin + clear,
    right: sheet.margin + sheet.frameWidth - clear,
    top: sheet.margin + clear,
    bottom: sheet.margin + sheet.frameHeight - clear,
  };
  return { sheet, grid, frameHalf, bounds, likenesses: [] };
}

/**
 * Traces the curve under a tap, both ways to its ends.
 * @param x,y the tap in sheet pixels; @param reach how far the finger may have missed
 * @param others curves already traced: this one may cross them but not run along them
 * @returns null where no line and no row of markers lies within reach
 */
export function traceCurve(
  table: TracingTable,
  x: number,
  y: number,
  reach: number,
  others: readonly TracedCurve[] = [],
): TracedCurve | null {
  const line = traceLine(table, x, y, reach, others);
  if (line && isLong(table, line)) return line;
  const markers = traceMarkers(table.sheet, table.grid, x, y, reach, table.frameHalf);
  if (markers && (!line || markers.trace.x.length > line.trace.x.length)) {
    return {
      trace: toFrameSides(table, markers.trace),
      drawn: 'markers',
      colour: line?.colour ?? [120, 120, 120],
      width: 2,
      doubts: [],
      looseEnds: [],
      scatter_px: markers.scatter_px,
    };
  }
  return line;
}

function traceLine(
  table: TracingTable,
  x: number,
  y: number,
  reach: number,
  others: readonly TracedCurve[],
): TracedCurve | null {
  const { sheet, grid, bounds } = table;
  const stroke = strokeNear(sheet, grid, x, y, reach);
  if (!stroke) return null;
  const like = sharedLikeness(table, stroke.colour);
  const usual = 0.8;
  const options = {
    bounds,
    width: stroke.width,
    usual,
    longestGap: 0.11 * Math.max(sheet.frameWidth, sheet.frameHeight),
    taken: takenBy(others),
  };
  const nearby = { ...options, style: SOLID, mostSteps: STYLE_STEPS };
  const style = styleAlong(like, joined(followStroke(like, stroke, -1, nearby), followStroke(like, stroke, 1, nearby)));
  const right = followStroke(like, stroke, 1, { ...options, style });
  const left = followStroke(like, stroke, -1, { ...options, style });
  const steps = style === SOLID ? withoutIslands(joined(left, right)) : joined(left, right);
  const trace = centreOfStroke(like, steps, stroke.width);
  if (!trace) return null;
  const doubts = [left.doubt, right.doubt].filter((d) => d !== null);
  const complete = toFrameSides(table, trace);
  return {
    trace: complete,
    drawn: 'line',
    colour: stroke.colour,
    width: stroke.width,
    doubts,
    looseEnds: ([0, 1] as const).filter((end) => goesOn(table, like, complete, end)).map((end) => endOf(complete, end)),
    scatter_px: 0,
  };
}

/** Enough way to tell dashes by, in steps of five pixels each way. */
const STYLE_STEPS = 26;

/** Two ways from one start as one, from left to right. */
const joined = (left: Followed, right: Followed): StrokeStep[] => [...left.steps.toReversed(), ...right.steps.slice(1)];

/**
 * Where a label interrupts a solid line, its letters look like bits of stroke. Between two stretches that are surely
 * line, a longer piece that is not is bridged: nothing in it is believed.
 */
function withoutIslands(steps: readonly StrokeStep[]): StrokeStep[] {
  const out = steps.map((s) => ({ ...s }));
  let sure = -1;
  for (let i = 0; i < out.length;) {
    let j = i;
    while (j < out.length && out[j]!.quality > SURE_QUALITY) j++;
    if (j - i >= SURE_STEPS) {
      if (sure >= 0 && i - sure > BRIDGED_STEPS) for (let k = sure; k < i; k++) out[k]!.quality = 0;
      sure = j;
    }
    i = Math.max(j, i + 1);
  }
  return out;
}

const SURE_QUALITY = 0.5;
const SURE_STEPS = 6;
const BRIDGED_STEPS = 5;

const isLong = ({ sheet }: TracingTable, { trace }: TracedCurve): boolean => {
  const seen = trace.seen.reduce((s, v) => s + (v > 0.3 ? 1 : 0), 0) / trace.seen.length;
  return Math.abs(trace.x.at(-1)! - trace.x[0]!) > 0.15 * sheet.frameWidth && seen > 0.3;
};

/** Curves of the same ink share one likeness picture. */
function sharedLikeness(table: TracingTable, colour: InkColour): Likeness {
  const same = table.likenesses.find((l) => distance(l.colour, colour) < 0.06);
  if (same) return same.likeness;
  const likeness = likenessTo(table.sheet, table.grid, colour);
  table.likenesses.push({ colour, likeness });
  return likeness;
}

const distance = (a: InkColour, b: InkColour) =>
  Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) / Math.hypot(b[0], b[1], b[2]);

/** Running along another curve costs; crossing it, a few steps, does not matter. */
function takenBy(others: readonly TracedCurve[]): ((x: number, y: number) => number) | undefined {
  if (!others.length) return undefined;
  const cells = new Set<number>();
  for (const { trace } of others)
    for (let i = 0; i < trace.x.length; i++)
      cells.add(Math.round(trace.y[i]! / 3) * 4096 + Math.round(trace.x[i]! / 3));
  return (x, y) => (cells.has(Math.round(y / 3) * 4096 + Math.round(x / 3)) ? 0.4 : 0);
}

const endOf = ({ x, y }: Trace, end: 0 | 1) => ({ x: x.at(end ? -1 : 0)!, y: y.at(end ? -1 : 0)! });

/** Whether ink like the curve's own runs on ahead of an end that lies inside the frame. */
function goesOn({ bounds }: TracingTable, like: Likeness, trace: Trace, end: 0 | 1): boolean {
  const { x, y } = endOf(trace, end);
  const room = 4;
  if (x < bounds.left + room || x > bounds.right - room || y < bounds.top + room || y > bounds.bottom - room)
    return false;
  const back = end ? trace.x.length - 9 : 8;
  const way = Math.atan2(y - trace.y[Math.max(0, back)]!, x - trace.x[Math.max(0, back)]!);
  for (let turn = -1.25; turn <= 1.3; turn += 0.125) {
    let ink = 0;
    for (let far = 7; far < 25; far++)
      ink += likeAt(like, x + far * Math.cos(way + turn), y + far * Math.sin(way + turn));
    if (ink / 18 > 0.5) return true;
  }
  return false;
}

/** A curve that ran into the frame line ends on it, not the line's half width before it. */
function toFrameSides({ sheet, frameHalf, bounds }: TracingTable, trace: Trace): Trace {
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
  const end = onSide(sheet, frameHalf, x.at(-1)!, y.at(-1)!, x.at(-1)! - x.at(-9)!, y.at(-1)! - y.at(-9)!);
  const start = onSide(sheet, frameHalf, x[0]!, y[0]!, x[0]! - x[8]!, y[0]! - y[8]!);
  if (end) (x.push(end[0]), y.push(end[1]), seen.push(0.5));
  if (start) (x.unshift(start[0]), y.unshift(start[1]), seen.unshift(0.5));
  return { x: Float64Array.from(x), y: Float64Array.from(y), seen: Float64Array.from(seen) };
}

/** Where the straight way on from (x, y) meets the frame, if that is just ahead. */
function onSide(
  sheet: Sheet,
  frameHalf: number,
  x: number,
  y: number,
  dx: number,
  dy: number,
): [number, number] | null {
  const near = frameHalf + 8;
  const left = sheet.margin;
  const top = sheet.margin;
  const goX = dx < 0 ? (left - x) / dx : dx > 0 ? (left + sheet.frameWidth - x) / dx : Infinity;
  const goY = dy < 0 ? (top - y) / dy : dy > 0 ? (top + sheet.frameHeight - y) / dy : Infinity;
  const go = Math.min(goX, goY);
  const across = goX < goY ? Math.abs(go * dx) : Math.abs(go * dy);
  if (!(go >= 0) || across > near || go * Math.hypot(dx, dy) > 2.5 * near) return null;
  return [x + go * dx, y + go * dy];
}
