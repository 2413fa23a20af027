import { fail, ok, pointer, type Issue, type Result } from '../issues/result.ts';
import { checkAxes, checkCorners } from './check-hints.ts';
import { frameDoubts, type Doubt } from './doubts.ts';
import { findCharts, type Aids, type FoundChart } from './find-chart.ts';
import type { AxisHint, ChartHints } from './hints.ts';
import type { FoundAxis } from './labels/name-axes.ts';
import type { PlotWord } from './labels/plot-words.ts';
import { findLines } from './lines/find-lines.ts';
import { nameLines } from './lines/name-lines.ts';
import { boxOnSheet } from './lines/near-words.ts';
import { curvesInSI, putTogether } from './put-together.ts';
import type { Photo } from './raster.ts';
import { areFull, gridDoubts, layChartFlat, readTaps, type FullHints } from './read-hinted.ts';
import type { ChartReading } from './reading.ts';
import type { StraightenedChart } from './straightened-chart.ts';

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
  const { charts, others } = await findCharts(photo, hints, aids);
  const [best] = charts;
  if (!best) return fail([NO_CHART]);
  const axes = axesOf(hints.axes ?? [], best.labels.axes);
  if (!axes.some((a) => a.quantity === 'flow') || !axes.some((a) => a.quantity !== 'flow'))
    return fail([hints.frameCorners_px ? NO_SCALES : NO_CHART]);
  aids.onStep('curves');
  const full: FullHints = {
    ...hints,
    frameCorners_px: best.labels.frame.corners.map(([x, y]) => [x, y]) as FullHints['frameCorners_px'],
    axes,
    seeds: hints.seeds ?? [],
  };
  const chart = flat(full);
  if (!chart.ok) return chart;
  const doubts = [...frameSure(best), ...axisDoubts(axes, best.labels.axes)];
  const read = full.seeds.length
    ? readTaps(photo, chart.value, full, doubts)
    : ok(
        readLines(chart.value, axes, best.labels.words, [
          ...frameDoubts(chart.value.frame, hints.exact ?? false),
          ...doubts,
        ]),
      );
  if (!read.ok || !others.length) return read;
  return ok({
    ...read.value,
    otherFrames_px: others.map((corners) => corners.map(([x, y]): [number, number] => [x, y])),
  });
}

/** Every curve of the plot, found and named. */
function readLines(
  chart: StraightenedChart,
  axes: readonly AxisHint[],
  words: readonly PlotWord[],
  doubts: readonly Doubt[],
): ChartReading {
  const boxes = words.filter((w) => w.isInside).map((w) => boxOnSheet(chart, w));
  const named = nameLines(findLines(chart.table, boxes), chart, axes, words);
  const { curves, doubts: ofCurves } = curvesInSI(chart, axes, named.curves);
  return putTogether(chart, axes, curves, (axis, i) => gridDoubts(chart, axis, i), [
    ...doubts,
    ...named.doubts,
    ...ofCurves,
  ]);
}

function issuesOf({ full: { width, height } }: Photo, { frameCorners_px, axes }: ChartHints): Issue[] {
  return [...(frameCorners_px ? checkCorners(frameCorners_px, width, height) : []), ...(axes ? checkAxes(axes) : [])];
}

/** The told axes, and those found that none of them stands for. */
function axesOf(told: readonly AxisHint[], found: readonly FoundAxis[]): AxisHint[] {
  const isTold = (axis: FoundAxis): boolean =>
    told.some((t) => t.id === axis.id || (t.quantity === 'flow' && axis.quantity === 'flow'));
  const plain = ({ id, quantity, unit, scale, min, max }: FoundAxis): AxisHint => ({
    ...{ id, quantity, unit, scale, min, max },
  });
  return [...told, ...found.filter((axis) => !isTold(axis)).map(plain)].sort((a, b) => a.id.localeCompare(b.id));
}

/** What was doubted while the axes were read, at their places in the answer. */
const axisDoubts = (axes: readonly AxisHint[], found: readonly FoundAxis[]): Doubt[] =>
  found.flatMap(({ id, min, max, doubts }) => {
    const at = axes.findIndex((axis) => axis.id === id && axis.min === min && axis.max === max);
    return at < 0
      ? []
      : doubts.map((doubt) => ({ ...doubt, warning: { ...doubt.warning, path: pointer('axes', at) } }));
  });

const UNSURE_FRAME = 0.6;
const frameSure = ({ confidence }: FoundChart): Doubt[] =>
  confidence >= UNSURE_FRAME
    ? []
    : [
        {
          warning: {
            code: 'frame-unsure',
            path: pointer('frameCorners_px'),
            text: 'The edges of the plot are hard to see: please check its corners.',
          },
          confidence: Math.max(0.3, confidence),
          serious: true,
        },
      ];

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
