import { fail, ok, pointer, type Issue, type Result } from '../issues/result.ts';
import { checkAxes, checkCorners } from './check-hints.ts';
import { frameDoubts, noPressure, oneOfSeveral, type Doubt } from './doubts.ts';
import { FINGER_REACH_PX, type SideName } from './frame/find-sides.ts';
import { findChart, type Aids } from './find-chart.ts';
import type { AxisHint, ChartHints } from './hints.ts';
import type { FoundAxis } from './labels/name-axes.ts';
import type { Labels } from './labels/read-labels.ts';
import { joinedTaps, type PartReading } from './join-taps.ts';
import type { PlotWord } from './labels/plot-words.ts';
import { panelsOf, plainAxis, seedsIn, type Panel } from './panels.ts';
import { isWithin } from '../picture/quad.ts';
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
      layChartFlat(photo, full, hints.frameCorners_px ? FINGER_REACH_PX : FOUND_REACH_PX),
    );
  const isOutside = (at: readonly [number, number]): boolean =>
    hints.frameCorners_px !== undefined && !isWithin(hints.frameCorners_px, at);
  if (areFull(hints) && !hints.seeds.some(({ point_px }) => isOutside(point_px))) {
    aids.onStep('curves');
    const chart = flat(hints);
    return chart.ok ? readTaps(photo, chart.value, hints) : chart;
  }
  const { chart: found, others, isOneOfSeveral } = await findChart(photo, hints, aids);
  if (!found) return fail([NO_CHART]);
  const panels = panelsOf(found, hints);
  const panelsOwn = panels.flatMap(({ axes: own }) => own.slice(1));
  const axes = axesOf(hints.axes?.filter((axis) => !panelsOwn.includes(axis)) ?? [], found.axes);
  if (!axes.some((a) => a.quantity === 'flow') || !axes.some((a) => a.quantity !== 'flow'))
    return fail([hints.frameCorners_px ? NO_SCALES : NO_CHART]);
  aids.onStep('curves');
  const full: FullHints = {
    ...hints,
    frameCorners_px: cornersOf(found.labels.frame.corners),
    axes,
    seeds: hints.seeds ?? [],
  };
  const chart = flat(full);
  if (!chart.ok) return chart;
  const scales = withGrids(chart.value, found.axes);
  const isTold = (side: SideName) => isRuled(gridAlong(chart.value, side)) || isTickedOut(side, scales);
  const doubts = [
    ...(isOneOfSeveral ? [oneOfSeveral()] : []),
    ...askFrame(found.confidence, chart.value.frame, scales, isTold),
    ...axisDoubts(axes, scales),
  ];
  const read = full.seeds.length
    ? tapsOf(photo, chart.value, full, doubts, laidFlat(panels, flat))
    : ok(
        answerOf(chart.value, readPanels(chart.value, axes, found.labels.words, laidFlat(panels, flat)), [
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

/** Corners that were found have been put on the print already: a line further off is another one, of graph paper for instance. */
const FOUND_REACH_PX = 8;

type FlatPanel = Panel & { readonly chart: StraightenedChart };

/** The panels that could be straightened. */
const laidFlat = (panels: readonly Panel[], flat: (hints: FullHints) => Result<StraightenedChart>): FlatPanel[] =>
  panels.flatMap((panel) => {
    const chart = flat({ frameCorners_px: cornersOf(panel.frameCorners_px), axes: [...panel.axes], seeds: [] });
    return chart.ok ? [{ ...panel, chart: chart.value }] : [];
  });

/** The plot, and those stacked with it over the same flow axis. */
const readPanels = (
  chart: StraightenedChart,
  axes: readonly AxisHint[],
  words: readonly PlotWord[],
  panels: readonly FlatPanel[],
): PlotReading =>
  panels.reduce(
    (all, panel) => {
      const read = readPlot(panel.chart, panel.axes, panel.words, all);
      const doubts = panel.found.flatMap((axis, i) =>
        doubtsAt(askGrid(axis, panel.chart.valueGrids.get(axis.id)), i + 1),
      );
      return stacked(all, { ...read, doubts: [...read.doubts, ...doubts] });
    },
    readPlot(chart, axes, words),
  );

/** The curves under the taps, each in the plot it was tapped in. */
function tapsOf(
  photo: Photo,
  chart: StraightenedChart,
  full: FullHints,
  doubts: readonly Doubt[],
  panels: readonly FlatPanel[],
): Result<ChartReading> {
  let rest = full.seeds.map((seed, at) => ({ seed, at }));
  let axisCount = full.axes.length;
  const parts = panels.flatMap((panel): PartReading[] => {
    const own = seedsIn(panel, rest);
    const first = axisCount;
    axisCount += panel.axes.length - 1;
    if (!own.length) return [];
    rest = rest.filter((one) => !own.includes(one));
    const hints = {
      frameCorners_px: cornersOf(panel.frameCorners_px),
      axes: [...panel.axes],
      seeds: own.map(({ seed }) => seed),
    };
    return [
      {
        read: readTaps(photo, panel.chart, hints),
        seedAt: own.map(({ at }) => at),
        axisAt: panel.axes.map((_, i) => (i ? first + i - 1 : 0)),
      },
    ];
  });
  if (!parts.length) return readTaps(photo, chart, full, doubts);
  const main = {
    read: readTaps(photo, chart, { ...full, seeds: rest.map(({ seed }) => seed) }, doubts),
    seedAt: rest.map(({ at }) => at),
    axisAt: full.axes.map((_, i) => i),
  };
  return joinedTaps(
    putTogether(chart, full.axes, [], () => [], []),
    [main, ...parts],
  );
}

function answerOf(chart: StraightenedChart, plot: PlotReading, doubts: readonly Doubt[]): ChartReading {
  const isFan = !plot.curves.length || plot.curves.some(({ quantity }) => quantity.endsWith('_pressure'));
  const all = [...doubts, ...plot.doubts, ...(isFan ? [] : [noPressure()])];
  return putTogether(chart, plot.axes, plot.curves, (_, i) => plot.doubtsOfAxes[i]!, all);
}

const cornersOf = (corners: Labels['frame']['corners']): FullHints['frameCorners_px'] =>
  corners.map(([x, y]) => [x, y]) as FullHints['frameCorners_px'];

function issuesOf({ full: { width, height } }: Photo, { frameCorners_px, axes }: ChartHints): Issue[] {
  return [...(frameCorners_px ? checkCorners(frameCorners_px, width, height) : []), ...(axes ? checkAxes(axes) : [])];
}

/** The told axes, and those found that none of them stands for. */
function axesOf(told: readonly AxisHint[], found: readonly FoundAxis[]): AxisHint[] {
  const isTold = (axis: FoundAxis): boolean =>
    told.some((t) => t.id === axis.id || (t.quantity === 'flow' && axis.quantity === 'flow'));
  return [...told, ...found.filter((axis) => !isTold(axis)).map(plainAxis)].sort((a, b) => a.id.localeCompare(b.id));
}

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
