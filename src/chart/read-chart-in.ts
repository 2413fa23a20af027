import { fail, ok, pointer, type Issue, type Result } from '../issues/result.ts';
import { checkAxes, checkCorners } from './check-hints.ts';
import { frameDoubts, noPressure, type Doubt } from './doubts.ts';
import type { SideName } from './frame/find-sides.ts';
import { findChart, type Aids, type FoundChart } from './find-chart.ts';
import type { AxisHint, ChartHints } from './hints.ts';
import type { FoundAxis } from './labels/name-axes.ts';
import type { Labels } from './labels/read-labels.ts';
import { printedDensity } from './printed-density.ts';
import { putTogether } from './put-together.ts';
import type { Photo } from '../picture/raster.ts';
import { areFull, layChartFlat, readTaps, type FullHints } from './read-hinted.ts';
import { readPlot, stacked, type PlotReading } from './read-plot.ts';
import type { ChartReading } from './reading.ts';
import { gridAlong, isRuled } from './grid/ruled.ts';
import type { StraightenedChart } from './straightened-chart.ts';
import { askFrame, askGrid, isTickedOut, type Witnessed } from './witnesses.ts';

/**
 * Reads a chart in a photo with whatever was told about it, from nothing at all to everything: what was told is taken,
 * the rest is found. `onStep` hears each step as it is begun.
 * @returns issues where the hints can't be, where there is no chart, or where its numbers cannot be read
 */
export async function readChartIn(photo: Photo, hints: ChartHints, aids: Aids): Promise<Result<ChartReading>> {
  const issues = issuesOf(photo, hints);
  if (issues.length) return fail(issues);
  const flat = (full: FullHints) =>
    aids.memory(`flat ${JSON.stringify([full.frameCorners_px, full.axes, full.exact])}`, () =>
      layChartFlat(photo, full),
    );
  if (areFull(hints)) {
    aids.onStep('curves');
    const chart = flat(hints);
    return chart.ok ? readTaps(photo, chart.value, hints) : chart;
  }
  const { chart: found, others } = await findChart(photo, hints, aids);
  if (!found) return fail([NO_CHART]);
  const axes = axesOf(hints.axes ?? [], found.axes);
  if (!axes.some((a) => a.quantity === 'flow') || !axes.some((a) => a.quantity !== 'flow'))
    return fail([hints.frameCorners_px ? NO_SCALES : NO_CHART]);
  aids.onStep('curves');
  const full: FullHints = { ...hints, frameCorners_px: cornersOf(found.labels), axes, seeds: hints.seeds ?? [] };
  const chart = flat(full);
  if (!chart.ok) return chart;
  const scales = withGrids(chart.value, found.axes);
  const isTold = (side: SideName) => isRuled(gridAlong(chart.value, side)) || isTickedOut(side, scales);
  const doubts = [...askFrame(found.confidence, chart.value.frame, scales, isTold), ...axisDoubts(axes, scales)];
  const read = full.seeds.length
    ? readTaps(photo, chart.value, full, doubts)
    : ok(
        answerOf(chart.value, readPanels(chart.value, axes, found, flat), [
          ...frameDoubts(chart.value.frame, hints.exact ?? false, isTold),
          ...doubts,
        ]),
      );
  if (!read.ok) return read;
  const density = printedDensity(found.labels.words);
  return ok({
    ...read.value,
    ...(others.length > 0 && {
      otherFrames_px: others.map((corners) => corners.map(([x, y]): [number, number] => [x, y])),
    }),
    ...(density !== null && { airDensity_kg_m3: density }),
  });
}

/** The plot, and those stacked with it over the same flow axis. */
function readPanels(
  chart: StraightenedChart,
  axes: readonly AxisHint[],
  { labels, panels }: FoundChart,
  flat: (hints: FullHints) => Result<StraightenedChart>,
): PlotReading {
  let all = readPlot(chart, axes, labels.words);
  for (const panel of panels) {
    const values = panel.axes.filter(({ quantity }) => quantity === 'shaft_power' || quantity === 'efficiency');
    if (!values.length) continue;
    const own = [
      ...axes.filter(({ quantity }) => quantity === 'flow'),
      ...values.map((axis, i) => ({ ...plain(axis), id: `y${all.axes.length + i}` })),
    ];
    const below = flat({ frameCorners_px: cornersOf(panel), axes: own, seeds: [] });
    if (!below.ok) continue;
    const read = readPlot(below.value, own, panel.words, all);
    const doubts = values.flatMap((axis, i) =>
      doubtsAt(askGrid(axis, below.value.valueGrids.get(own[i + 1]!.id)), i + 1),
    );
    all = stacked(all, { ...read, doubts: [...read.doubts, ...doubts] });
  }
  return all;
}

function answerOf(chart: StraightenedChart, plot: PlotReading, doubts: readonly Doubt[]): ChartReading {
  const isFan = !plot.curves.length || plot.curves.some(({ quantity }) => quantity.endsWith('_pressure'));
  const all = [...doubts, ...plot.doubts, ...(isFan ? [] : [noPressure()])];
  return putTogether(chart, plot.axes, plot.curves, (_, i) => plot.doubtsOfAxes[i]!, all);
}

const cornersOf = ({ frame }: Labels): FullHints['frameCorners_px'] =>
  frame.corners.map(([x, y]) => [x, y]) as FullHints['frameCorners_px'];

function issuesOf({ full: { width, height } }: Photo, { frameCorners_px, axes }: ChartHints): Issue[] {
  return [...(frameCorners_px ? checkCorners(frameCorners_px, width, height) : []), ...(axes ? checkAxes(axes) : [])];
}

/** The told axes, and those found that none of them stands for. */
function axesOf(told: readonly AxisHint[], found: readonly FoundAxis[]): AxisHint[] {
  const isTold = (axis: FoundAxis): boolean =>
    told.some((t) => t.id === axis.id || (t.quantity === 'flow' && axis.quantity === 'flow'));
  return [...told, ...found.filter((axis) => !isTold(axis)).map(plain)].sort((a, b) => a.id.localeCompare(b.id));
}

const plain = ({ id, quantity, unit, scale, min, max }: FoundAxis): AxisHint => ({
  id,
  quantity,
  unit,
  scale,
  min,
  max,
});

/** What was doubted while the axes were read, at their places in the answer. */
const axisDoubts = (axes: readonly AxisHint[], scales: readonly Witnessed[]): Doubt[] =>
  scales.flatMap(([axis, grid]) => {
    const at = axes.findIndex(({ id, min, max }) => id === axis.id && min === axis.min && max === axis.max);
    return at < 0 ? [] : doubtsAt(askGrid(axis, grid), at);
  });

const withGrids = (chart: StraightenedChart, found: readonly FoundAxis[]): Witnessed[] =>
  found.map((axis) => [axis, axis.quantity === 'flow' ? chart.flowGrid : chart.valueGrids.get(axis.id)]);

const doubtsAt = (doubts: readonly Doubt[], index: number): Doubt[] =>
  doubts.map((doubt) => ({ ...doubt, warning: { ...doubt.warning, path: pointer('axes', index) } }));

const NO_CHART: Issue = {
  code: 'contradiction',
  path: pointer('frameCorners_px'),
  message:
    'No fan chart was found on this photo. If there is one, mark its four corners; else take the photo again, nearer and in even light.',
};
const NO_SCALES: Issue = {
  code: 'contradiction',
  path: pointer('axes'),
  message: 'The numbers along this plot could not be read: please type what stands at both ends of its scales.',
};
