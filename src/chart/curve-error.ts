import type { FrameSide } from './frame/find-sides.ts';
import { hiddenStretches } from './trace/hidden-stretches.ts';
import type { ScaleGrid } from './grid/scale-grid.ts';
import type { StraightenedChart } from './straightened-chart.ts';
import type { TracedCurve } from './trace/trace.ts';

/** How far a side may lie beside its place, photo pixels: one standard uncertainty by what was seen of it. */
const SIDE_px: Record<FrameSide['kind'], number> = { line: 0.25, edge: 0.6, comb: 0.5, open: 14 };
/** A faint line may be the neighbouring grid line's or a table's; round values of the grid settle it. */
const FAINT_px = 2;
/** Open sides put in place by the grid's lines, or by a few ticks alone. */
const RULED_px = 1;
const TICKED_px = 8;
/** A grid line is an anchor in many places, a tick in one. */
const GRID_ANCHORS = 24;
/** Where the sides bow and no grid tells how the page bends between them. */
const UNRULED_SHARE_OF_BOW = 0.3;
/** The middle of a stroke that was seen, sheet pixels. */
const STROKE_px = 0.08;
/** A bridge over a hidden stretch leaves the curve by so much of its length. */
const BRIDGE = 0.035;
/** A smooth line through a dozen test points: what it is off, sheet pixels, beside what lies between them. */
const THROUGH_MARKERS_px = 2;
/** Another way was nearly as good. */
const FORK = 0.01;

/**
 * The error to expect of a traced curve: root mean square distance from the printed one, as a share of full scale (one
 * standard uncertainty). Made up of what was seen of the frame's sides, how well the grid bears out the scales, how
 * clearly the stroke showed, and what was bridged; a scale or an axis that was misread is no part of it.
 * @param yAxis the axis the curve is read on
 */
export function expectedError(chart: StraightenedChart, yAxis: string, curve: TracedCurve): number {
  const { frame, sheet, flowGrid } = chart;
  const { left, right, bottom, top } = frame.sides;
  const values = chart.valueGrids.get(yAxis);
  if (!values) throw new RangeError(`yAxis: expected one of the chart's, received ${yAxis}`);
  const wide_px = sheet.frameWidth * sheet.photoPixels;
  const tall_px = sheet.frameHeight * sheet.photoPixels;
  // an error at one end of a scale grows from nothing at the other
  const across = Math.hypot(endError(left, flowGrid), endError(right, flowGrid)) / wide_px / Math.sqrt(3);
  const up = Math.hypot(endError(bottom, values), endError(top, values)) / tall_px / Math.sqrt(3);
  const bend = Math.hypot(bendError(flowGrid, [bottom, top]), bendError(values, [left, right]));
  // half of an error along one axis lies along the curve and does not count
  const placed = Math.hypot(across, up, bend) / Math.SQRT2;
  const stroke = STROKE_px / Math.min(sheet.frameWidth, sheet.frameHeight);
  const parts = [placed, stroke, hiddenError(chart, curve), FORK * Math.sqrt(curve.doubts.length)];
  if (curve.drawn === 'markers') parts.push((curve.doubt_px + THROUGH_MARKERS_px) / sheet.frameHeight);
  return Math.hypot(...parts);
}

function endError({ kind, course, isFaint }: FrameSide, { lattice, isRound, anchors }: ScaleGrid): number {
  const anchored = lattice !== null && isRound && lattice.anchored.length > 2;
  if (!course) return anchored ? (anchors.length > GRID_ANCHORS ? RULED_px : TICKED_px) : SIDE_px.open;
  return isFaint && !anchored ? FAINT_px : SIDE_px[kind];
}

/** What the page's bend may leave along one axis, shares of it. @param beside the sides that run along the axis */
function bendError({ lattice, bend }: ScaleGrid, beside: readonly FrameSide[]): number {
  if (lattice) return bend.residual;
  return UNRULED_SHARE_OF_BOW * Math.max(...beside.map(bowOf));
}

/** How far a side leaves the straight line between its ends, share of its length. */
function bowOf({ course, axis: { length_px } }: FrameSide): number {
  if (!course) return 0.005;
  const from = course.value(0);
  const to = course.value(length_px);
  const off = [0.25, 0.5, 0.75].map((f) => Math.abs(course.value(f * length_px) - from - f * (to - from)));
  return Math.max(...off) / length_px;
}

function hiddenError({ sheet }: StraightenedChart, { trace, drawn }: TracedCurve): number {
  if (drawn === 'markers') return 0;
  const whole = trace.x.length - 1;
  let sum = 0;
  for (const [from, to] of hiddenStretches(trace.seen)) {
    const length = Math.hypot(trace.x[to]! - trace.x[from]!, trace.y[to]! - trace.y[from]!) / sheet.frameWidth;
    sum += ((to - from) / whole) * (BRIDGE * length) ** 2;
  }
  return Math.sqrt(sum);
}
