import { cornersFromGrid } from './frame/corners-from-grid.ts';
import type { FrameSide } from './frame/find-sides.ts';
import { frameMapOf, type FrameMap } from './frame/frame-map.ts';
import { exactFrame, hasOpenSide, snapFrame, withCorners, type SnappedFrame } from './frame/frame-snap.ts';
import { gridInkOf } from './grid/grid-ink.ts';
import type { AxisHint } from './hints.ts';
import type { FreeEnds } from './grid/lattice.ts';
import type { Photo } from '../picture/raster.ts';
import { readScaleGrid, type ScaleGrid } from './grid/scale-grid.ts';
import type { Polarity } from './frame/side-band.ts';
import { fromSheet, straighten, type Sheet } from './sheet.ts';
import type { Corners } from './spaces.ts';
import { tracingTable, type TracingTable } from './trace/tracing-table.ts';

/** A chart laid flat: where its frame is, the sheet, what its grid says about each scale, ready for tracing curves. */
export type StraightenedChart = {
  readonly frame: SnappedFrame;
  readonly map: FrameMap;
  readonly sheet: Sheet;
  readonly polarity: Polarity;
  readonly flow: AxisHint;
  readonly flowGrid: ScaleGrid;
  /** by axis id */
  readonly valueGrids: ReadonlyMap<string, ScaleGrid>;
  readonly table: TracingTable;
};

/**
 * Lays a chart flat. Where the frame is open, the round values of grid and ticks tell where it would be, and the chart
 * is laid flat once more.
 * @param axes one of them the flow axis, at least one other; else RangeError
 * @param polarity whether lines are darker or lighter than the paper, if that is known better than the frame tells
 * @param reach_px how far the corners may be off, photo pixels
 * @returns null where three corners lie on one line
 */
export function straightenChart(
  photo: Photo,
  corners: Corners,
  axes: readonly AxisHint[],
  exact: boolean,
  polarity?: Polarity,
  reach_px?: number,
): StraightenedChart | null {
  const flow = axes.find((a) => a.quantity === 'flow');
  const values = axes.filter((a) => a.quantity !== 'flow');
  if (!flow || !values.length)
    throw new RangeError(`axes: expected a flow axis and another, received ${axes.map((a) => a.quantity).join(', ')}`);
  const frame = exact ? exactFrame(photo, corners) : snapFrame(photo, corners, reach_px);
  const first = layFlat(photo, frame, flow, values, polarity);
  if (!first || exact || !hasOpenSide(frame)) return first;
  const better = cornersFromGrid(
    frame,
    first.map,
    first.flowGrid.anchors,
    first.valueGrids.get(values[0]!.id)!.anchors,
  );
  return (better && layFlat(photo, withCorners(frame, better), flow, values, polarity)) ?? first;
}

function layFlat(
  photo: Photo,
  frame: SnappedFrame,
  flow: AxisHint,
  values: readonly AxisHint[],
  polarity?: Polarity,
): StraightenedChart | null {
  const map = frameMapOf(frame);
  if (!map) return null;
  const shown = polarity ?? frame.polarity;
  const sheet = straighten(photo, map, shown);
  const { left, right, bottom, top } = frame.sides;
  const open = (low: typeof left, high: typeof left): FreeEnds => ({ low: isFree(low), high: isFree(high) });
  const flowGrid = readScaleGrid(sheet, 'upright', flow, open(left, right));
  const valueGrids = new Map(values.map((axis) => [axis.id, readScaleGrid(sheet, 'level', axis, open(bottom, top))]));
  const levels = valueGrids.get(values[0]!.id)!;
  const table = tracingTable(sheet, gridInkOf(sheet, flowGrid.lines, levels.lines));
  return { frame, map, sheet, polarity: shown, flow, flowGrid, valueGrids, table };
}

const isFree = ({ course, isFaint }: FrameSide): boolean => !course || Boolean(isFaint);

/** Fractions of the flow axis and another at a place on the sheet, the page's bend taken out by the grid. */
export function trueFractions(
  chart: StraightenedChart,
  axisId: string,
  x: number,
  y: number,
): readonly [number, number] {
  const [u, v] = fromSheet(chart.sheet, x, y);
  return [u + chart.flowGrid.bend.at(u, v), v + chart.valueGrids.get(axisId)!.bend.at(u, v)];
}
