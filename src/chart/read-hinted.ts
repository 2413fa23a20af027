import { fail, ok, pointer, type Issue, type Result } from '../issues/result.ts';
import { valueAt, type AxisScale } from './axes.ts';
import { checkAxes, checkCorners, checkSeeds, toSI, unitOf } from './check-hints.ts';
import { curveDoubts, frameDoubts, scaleDoubts, sharedWay, type Doubt } from './doubts.ts';
import { frameMapOf, type FrameMap } from './frame-map.ts';
import { exactFrame, snapFrame } from './frame-snap.ts';
import { gridInkOf } from './grid-ink.ts';
import type { AxisHint, ChartHints, SeedHint } from './hints.ts';
import type { Photo } from './raster.ts';
import type { ChartReading, CurveReading } from './reading.ts';
import { readScaleGrid, type ScaleGrid } from './scale-grid.ts';
import { fromSheet, straighten, toSheet, type Sheet } from './sheet.ts';
import { photoPoint, type Corners } from './spaces.ts';
import { traceCurve, tracingTable, type TracedCurve } from './trace.ts';

/** Hints that are enough to read a chart without looking for frame, scales or curves. */
export type FullHints = ChartHints & Required<Pick<ChartHints, 'frameCorners_px' | 'axes' | 'seeds'>>;

/** True where corners, a flow axis with one for every seed, and at least one seed are given. */
export function areFull(hints: ChartHints): hints is FullHints {
  return Boolean(
    hints.frameCorners_px &&
    hints.axes?.some((a) => a.quantity === 'flow') &&
    hints.axes.length > 1 &&
    hints.seeds?.length,
  );
}

/** A finger on the photo may miss a curve by this much. */
const TAP_REACH_PX = 16;

/**
 * Reads the tapped curves of a chart whose corners and scales are told.
 * The corners are moved onto the printed frame, the page is straightened, the grid is used as a ruler, each tapped curve
 * is followed to its ends, and whatever is not sure is said.
 * @returns issues where the hints can't be, or where no line lies under any of the taps
 */
export function readHintedChart(photo: Photo, hints: FullHints): Result<ChartReading> {
  const { axes, seeds } = hints;
  const issues = [
    ...checkCorners(hints.frameCorners_px, photo.full.width, photo.full.height),
    ...checkAxes(axes),
    ...checkSeeds(seeds, axes),
  ];
  if (issues.length) return fail(issues);

  const corners = hints.frameCorners_px.map(([x, y]) => photoPoint(x, y)) as unknown as Corners;
  const frame = hints.exact ? exactFrame(photo, corners) : snapFrame(photo, corners);
  const map = frameMapOf(frame);
  if (!map)
    return fail([
      { code: 'out-of-range', path: pointer('frameCorners_px'), message: 'Three of the corners lie on one line.' },
    ]);

  const sheet = straighten(photo, map, frame.polarity);
  const xIndex = axes.findIndex((a) => a.quantity === 'flow');
  const used = axes.map((a, i) => ({ axis: a, index: i })).filter(({ axis }) => seeds.some((s) => s.yAxis === axis.id));
  const flowGrid = readScaleGrid(sheet, 'upright', axes[xIndex]!);
  const valueGrids = new Map(used.map(({ axis }) => [axis.id, readScaleGrid(sheet, 'level', axis)]));
  const doubts = [
    ...frameDoubts(frame, hints.exact ?? false),
    ...scaleDoubts(flowGrid, xIndex, 'flow'),
    ...used.flatMap(({ axis, index }) => scaleDoubts(valueGrids.get(axis.id)!, index, axis.quantity.replace('_', ' '))),
  ];

  const levels = [...valueGrids.values()][0]!;
  const table = tracingTable(sheet, gridInkOf(sheet, flowGrid.lines, levels.lines));
  const taps = seeds.map((seed) => tapOn(sheet, map, seed, hints.exact ?? false));
  const traced = apart(
    taps.map((t) => traceCurve(table, t.x, t.y, t.reach)),
    (i, others) => traceCurve(table, taps[i]!.x, taps[i]!.y, taps[i]!.reach, others),
    (i, j) => doubts.push(runTogether(i, j)),
  );
  const missing: Issue[] = [];
  const curves: CurveReading[] = [];
  seeds.forEach((seed, i) => {
    const curve = traced[i];
    const path = pointer('seeds', i);
    if (!curve) {
      missing.push({
        code: 'contradiction',
        path: pointer('seeds', i, 'point_px'),
        message: 'No line was found under this tap.',
      });
      return;
    }
    const axis = axes.find((a) => a.id === seed.yAxis)!;
    const scales = { flow: axes[xIndex]!, value: axis, flowGrid, valueGrid: valueGrids.get(axis.id)! };
    const own = curveDoubts(sheet, curve, (x, y) => trueFraction(sheet, scales, x, y), axes[xIndex]!, path);
    doubts.push(...own);
    curves.push({
      id: `c${i + 1}`,
      yAxis: seed.yAxis,
      quantity: seed.quantity,
      speed_rpm: seed.speed_rpm ?? null,
      ...pointsOf(sheet, map, curve, scales),
      confidence: product(own),
    });
  });
  if (!curves.length) return fail(missing);
  for (const m of missing)
    doubts.push({
      warning: { code: 'no-line-under-tap', text: m.message, path: m.path },
      confidence: 0.5,
      serious: true,
    });

  const overall = product(doubts);
  return ok({
    frameCorners_px: frame.corners.map(([x, y]) => [x, y]),
    axes: axes.map((a, i) => ({
      ...a,
      confidence: product(
        i === xIndex
          ? scaleDoubts(flowGrid, i, '')
          : valueGrids.has(a.id)
            ? scaleDoubts(valueGrids.get(a.id)!, i, '')
            : [],
      ),
    })),
    curves,
    confidence: { overall, needsReview: overall < 0.6 || doubts.some((d) => d.serious) },
    warnings: doubts.map((d) => d.warning),
  });
}

/** Nothing is ever quite certain. */
const BEST = 0.98;
const product = (doubts: readonly Doubt[]): number => doubts.reduce((p, d) => p * d.confidence, BEST);

function tapOn(sheet: Sheet, map: FrameMap, seed: SeedHint, exact: boolean): { x: number; y: number; reach: number } {
  const [u, v] = map.toFrame(seed.point_px[0], seed.point_px[1]);
  const [x, y] = toSheet(sheet, u, v);
  return { x, y, reach: exact || seed.exact ? 1.5 : Math.max(4, TAP_REACH_PX / sheet.photoPixels) };
}

type Scales = { flow: AxisHint; value: AxisHint; flowGrid: ScaleGrid; valueGrid: ScaleGrid };

/** Fractions of both axes at a place on the sheet, the page's bend taken out by the grid. */
function trueFraction(sheet: Sheet, { flowGrid, valueGrid }: Scales, x: number, y: number): readonly [number, number] {
  const [u, v] = fromSheet(sheet, x, y);
  return [u + flowGrid.bend.at(u, v), v + valueGrid.bend.at(u, v)];
}

/** Every third point of the trace as SI values, sorted by flow, each with its place in the photo. */
function pointsOf(
  sheet: Sheet,
  map: FrameMap,
  { trace }: TracedCurve,
  scales: Scales,
): Pick<CurveReading, 'points' | 'points_px'> {
  const flowUnit = unitOf(scales.flow)!;
  const valueUnit = unitOf(scales.value)!;
  const n = trace.x.length;
  const rows: { value: [number, number]; px: [number, number] }[] = [];
  for (let i = 0; i < n; i += i + 3 < n || i === n - 1 ? 3 : n - 1 - i) {
    const x = trace.x[i]!;
    const y = trace.y[i]!;
    const [fu, fv] = trueFraction(sheet, scales, x, y);
    const [u, v] = fromSheet(sheet, x, y);
    const [px, py] = map.toPhoto(u, v);
    rows.push({ value: [at(scales.flow, fu, flowUnit), at(scales.value, fv, valueUnit)], px: [px, py] });
  }
  rows.sort((a, b) => a.value[0] - b.value[0]);
  const span = Math.abs(rows.at(-1)!.value[0] - rows[0]!.value[0]);
  const kept = rows.filter((r, i) => i === 0 || r.value[0] - rows[i - 1]!.value[0] > 1e-7 * span);
  return { points: kept.map((r) => r.value), points_px: kept.map((r) => r.px) };

  function at(axis: AxisScale, fraction: number, unit: NonNullable<ReturnType<typeof unitOf>>): number {
    return toSI(valueAt(axis, Math.min(1, Math.max(0, fraction))), unit);
  }
}

/** Two taps whose curves came out as one: each is tried again with the other's way taken, and the fuller pair is kept. */
function apart(
  curves: (TracedCurve | null)[],
  again: (index: number, others: readonly TracedCurve[]) => TracedCurve | null,
  tell: (i: number, j: number) => void,
): (TracedCurve | null)[] {
  const out = [...curves];
  for (let i = 0; i < out.length; i++)
    for (let j = i + 1; j < out.length; j++) {
      const a = out[i];
      const b = out[j];
      if (!a || !b || sharedWay(a, b) < 0.12) continue;
      const b2 = again(j, [a]);
      const a2 = again(i, [b]);
      const options = [
        [a, b2],
        [a2, b],
      ].map(([p, q]) => ({
        p,
        q,
        shared: p && q ? sharedWay(p, q) : 1,
        length: (p?.trace.x.length ?? 0) + (q?.trace.x.length ?? 0),
      }));
      options.sort((p, q) => q.length * (1 - q.shared) - p.length * (1 - p.shared));
      const best = options[0]!;
      if (best.p && best.q && best.shared < sharedWay(a, b)) {
        out[i] = best.p;
        out[j] = best.q;
      }
      if (out[i] && out[j] && sharedWay(out[i]!, out[j]!) >= 0.12) tell(i, j);
    }
  return out;
}

const runTogether = (i: number, j: number): Doubt => ({
  warning: {
    code: 'curves-run-together',
    text: `The curves under tap ${i + 1} and tap ${j + 1} came out on top of each other for a part of their way: please check both.`,
    path: pointer('seeds', j),
  },
  confidence: 0.5,
  serious: true,
});
