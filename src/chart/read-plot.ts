import { pointer } from '../issues/result.ts';
import type { Doubt } from './doubts.ts';
import type { AxisHint } from './hints.ts';
import type { PlotWord } from './labels/plot-words.ts';
import { findLines } from './lines/find-lines.ts';
import { nameLines } from './lines/name-lines.ts';
import { boxOnSheet } from './lines/near-words.ts';
import { curvesInSI } from './put-together.ts';
import { gridDoubts } from './read-hinted.ts';
import type { CurveReading } from './reading.ts';
import type { StraightenedChart } from './straightened-chart.ts';

/** What one plot frame holds: its axes, its curves, and all doubts about them with their places in the answer. */
export type PlotReading = {
  readonly axes: readonly AxisHint[];
  readonly curves: readonly CurveReading[];
  readonly doubtsOfAxes: readonly (readonly Doubt[])[];
  readonly doubts: readonly Doubt[];
};

/**
 * Every curve of a plot, found and named.
 * @param axes the flow axis among them
 * @param above the plot stacked with it that has the pressure curves
 */
export function readPlot(
  chart: StraightenedChart,
  axes: readonly AxisHint[],
  words: readonly PlotWord[],
  above?: PlotReading,
): PlotReading {
  const known = above?.curves.filter((c) => c.quantity.endsWith('pressure')).map((c) => c.speed_rpm) ?? [];
  const boxes = words.filter((w) => w.isInside).map((w) => boxOnSheet(chart, w));
  const named = nameLines(
    findLines(chart.table, boxes),
    chart,
    axes,
    words,
    known.filter((n) => n !== null),
  );
  const { curves, doubts } = curvesInSI(chart, axes, named.curves);
  const doubtsOfAxes = axes.map((axis, i) => gridDoubts(chart, axis, i));
  return { axes, curves, doubtsOfAxes, doubts: [...named.doubts, ...doubts] };
}

/**
 * Two panels over one flow axis as one plot: the second's axes and curves come after the first's.
 * @param panel its first axis is the shared one
 */
export function stacked(main: PlotReading, panel: PlotReading): PlotReading {
  const axisAt = (i: number): number => (i === 0 ? 0 : main.axes.length - 1 + i);
  const moved = (doubt: Doubt): Doubt => {
    const [, list, index, ...rest] = doubt.warning.path.split('/');
    const i = Number(index);
    if (index === undefined || (list !== 'axes' && list !== 'curves')) return doubt;
    const at = list === 'axes' ? axisAt(i) : main.curves.length + i;
    return { ...doubt, warning: { ...doubt.warning, path: pointer(list, at, ...rest) } };
  };
  return {
    axes: [...main.axes, ...panel.axes.slice(1)],
    curves: [...main.curves, ...panel.curves.map((curve, i) => ({ ...curve, id: `c${main.curves.length + i + 1}` }))],
    doubtsOfAxes: [...main.doubtsOfAxes, ...panel.doubtsOfAxes.slice(1).map((list) => list.map(moved))],
    doubts: [...main.doubts, ...panel.doubts.map(moved)],
  };
}
