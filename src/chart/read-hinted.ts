import { fail, ok, pointer, type Result } from '../issues/result.ts';
import { keepApart } from './trace/apart.ts';
import { fromBase } from '../units/names.ts';
import { checkAxes, checkCorners, checkSeeds, unitOf } from './check-hints.ts';
import { beginsLate, frameDoubts, noLine, NO_LINE, runTogether, scaleDoubts, type Doubt } from './doubts.ts';
import { oddBeginnings } from './family.ts';
import type { AxisHint, ChartHints, SeedHint } from './hints.ts';
import type { Photo } from '../picture/raster.ts';
import { gridAlong, isRuled } from './grid/ruled.ts';
import { curvesInSI, putTogether } from './put-together.ts';
import type { ChartReading } from './reading.ts';
import { toSheet } from './sheet.ts';
import { photoPoint, type Corners } from './spaces.ts';
import { straightenChart, type StraightenedChart } from './straightened-chart.ts';
import { traceCurve, type TracedCurve } from './trace/trace.ts';
import { untangle } from './trace/untangle.ts';

/** Hints that are enough to read a chart without looking for frame, scales or curves. */
export type FullHints = ChartHints & Required<Pick<ChartHints, 'frameCorners_px' | 'axes' | 'seeds'>>;

/** True where corners, a flow axis with another, and at least one seed are given, and every axis a seed names. Source: definition. */
export function areFull(hints: ChartHints): hints is FullHints {
  const { frameCorners_px, axes, seeds } = hints;
  return Boolean(
    frameCorners_px &&
    axes?.some((a) => a.quantity === 'flow') &&
    axes.some((a) => a.quantity !== 'flow') &&
    seeds?.length &&
    seeds.every((seed) => axes.some((a) => a.id === seed.yAxis)),
  );
}

/** A finger on the photo may miss a curve by this much. */
const TAP_REACH_PX = 16;

/**
 * Reads the tapped curves of a chart whose corners and scales are told: the corners are moved onto the printed frame,
 * the page is straightened, the grid is used as a ruler, each tapped curve is followed to its ends, and whatever is
 * not sure is said.
 * @returns issues where the hints can't be, or where no line lies under any of the taps
 */
export function readHintedChart(photo: Photo, hints: FullHints): Result<ChartReading> {
  const chart = layChartFlat(photo, hints);
  return chart.ok ? readTaps(photo, chart.value, hints) : chart;
}

/** The first half of a reading: what corners and axes alone decide, good for any number of taps. */
export function layChartFlat(photo: Photo, hints: FullHints, reach_px?: number): Result<StraightenedChart> {
  const { width, height } = photo.full;
  const issues = [...checkCorners(hints.frameCorners_px, width, height), ...checkAxes(hints.axes)];
  if (issues.length) return fail(issues);
  const chart = straightenChart(photo, cornersOf(hints), hints.axes, hints.exact ?? false, undefined, reach_px);
  return chart
    ? ok(chart)
    : fail([
        { code: 'out-of-range', path: pointer('frameCorners_px'), message: 'Three of the corners lie on one line.' },
      ]);
}

/** The second half: the curve under each tap. @param chart laid flat from the same photo, corners and axes */
export function readTaps(
  photo: Photo,
  chart: StraightenedChart,
  hints: FullHints,
  told: readonly Doubt[] = [],
): Result<ChartReading> {
  const { axes, seeds } = hints;
  const issues = checkSeeds(seeds, axes);
  if (issues.length) return fail(issues);
  const { used, traced, together } = traceTaps(photo, chart, hints);
  const { curves, doubts } = curvesInSI(
    used,
    axes,
    seeds.flatMap(({ yAxis, quantity, speed_rpm }, i) => {
      const curve = traced[i];
      const path = pointer('seeds', i);
      return curve ? [{ id: `c${i + 1}`, curve, yAxis, quantity, speed_rpm: speed_rpm ?? null, path, doubts: [] }] : [];
    }),
  );
  if (!curves.length)
    return fail(
      seeds.map((_, i) => ({ code: 'contradiction', path: pointer('seeds', i, 'point_px'), message: NO_LINE })),
    );
  traced.forEach((curve, i) => curve ?? doubts.push(noLine(i)));
  const flowUnit = unitOf(used.flow)!;
  for (const { curve, flow } of oddBeginnings(curves))
    doubts.push(beginsLate(Number(curves[curve]!.id.slice(1)) - 1, fromBase(flow, flowUnit), used.flow));
  const isRead = (axis: AxisHint) => axis.quantity === 'flow' || seeds.some((s) => s.yAxis === axis.id);
  return ok(
    putTogether(used, axes, curves, (axis, i) => (isRead(axis) ? gridDoubts(used, axis, i) : []), [
      ...frameDoubts(used.frame, hints.exact ?? false, (side) => isRuled(gridAlong(used, side))),
      ...together.map(([i, j]) => runTogether(i, j)),
      ...doubts,
      ...told,
    ]),
  );
}

type Taps = { used: StraightenedChart; traced: (TracedCurve | null)[]; together: [number, number][] };

/** The curves under the taps; where there are none at all, lines may be lighter than the paper, or darker, after all. */
function traceTaps(photo: Photo, chart: StraightenedChart, hints: FullHints): Taps {
  const taps = traceOn(chart, hints);
  if (taps.traced.some(Boolean)) return taps;
  const other = chart.polarity === 'dark' ? 'light' : 'dark';
  const turned = straightenChart(photo, cornersOf(hints), hints.axes, hints.exact ?? false, other);
  return turned ? traceOn(turned, hints) : taps;
}

function traceOn(chart: StraightenedChart, hints: FullHints): Taps {
  const trace = (seed: SeedHint, others: readonly TracedCurve[] = []) => {
    const [u, v] = chart.map.toFrame(seed.point_px[0], seed.point_px[1]);
    const [x, y] = toSheet(chart.sheet, u, v);
    const reach = hints.exact || seed.exact ? EXACT_REACH : Math.max(4, TAP_REACH_PX / chart.sheet.photoPixels);
    return traceCurve(chart.table, x, y, reach, others);
  };
  const alone = hints.seeds.map((seed) => trace(seed));
  const { curves, together } = keepApart(alone, (i, others) => trace(hints.seeds[i]!, others));
  const { curves: traced, unsure } = untangle(curves);
  for (const { curve, x, y } of unsure)
    traced[curve] = { ...traced[curve]!, doubts: [...traced[curve]!.doubts, { x, y }] };
  return { used: chart, traced, together };
}

const cornersOf = ({ frameCorners_px }: FullHints): Corners =>
  frameCorners_px.map(([x, y]) => photoPoint(x, y)) as unknown as Corners;

/** Whether the grid bears a scale out, with the axis's name in words. Lines that are another scale's say nothing of this one. */
export const gridDoubts = (chart: StraightenedChart, axis: AxisHint, index: number): Doubt[] => {
  if (axis.quantity === 'flow') return scaleDoubts(chart.flowGrid, index, 'flow');
  const isOthers = [...chart.valueGrids].some(([id, grid]) => id !== axis.id && isRuled(grid));
  return scaleDoubts(chart.valueGrids.get(axis.id)!, index, axis.quantity.replace('_', ' '), isOthers);
};

/** An exact tap still needs the stroke's width to be looked at, sheet pixels. */
const EXACT_REACH = 1.5;
