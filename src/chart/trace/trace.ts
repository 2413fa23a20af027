import { toFrameSides } from './curve-ends.ts';
import type { InkColour } from './likeness.ts';
import type { Trace } from './stroke-centre.ts';
import { traceLine } from './trace-line.ts';
import { traceMarkers } from './trace-markers.ts';
import type { TracingTable } from './tracing-table.ts';

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
  /** markers: how far the curve may be off between them, root mean square, sheet pixels; lines: 0 */
  readonly doubt_px: number;
};

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
  // a tap on a marker: the line through it shows further out
  const through = traceLine(table, x, y, reach, others, PAST_MARKER_PX);
  if (through && isLong(table, through)) return through;
  const markers = traceMarkers(table.sheet, table.grid, x, y, reach, table.frameHalf);
  if (markers && (!line || markers.trace.x.length > line.trace.x.length)) {
    return {
      trace: toFrameSides(table, markers.trace),
      drawn: 'markers',
      colour: line?.colour ?? [120, 120, 120],
      width: 2,
      doubts: [],
      looseEnds: markers.looseEnds,
      doubt_px: markers.doubt_px,
    };
  }
  return line;
}

const PAST_MARKER_PX = 34;

const isLong = ({ sheet }: TracingTable, { trace }: TracedCurve): boolean => {
  const seen = trace.seen.reduce((s, v) => s + (v > 0.3 ? 1 : 0), 0) / trace.seen.length;
  return Math.abs(trace.x.at(-1)! - trace.x[0]!) > 0.15 * sheet.frameWidth && seen > 0.3;
};
