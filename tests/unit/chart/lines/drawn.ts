import { preparePhoto, type AxisHint } from '../../../../src/chart/index.ts';
import { findLines } from '../../../../src/chart/lines/find-lines.ts';
import { nameLines } from '../../../../src/chart/lines/name-lines.ts';
import type { PrintedWord } from '../../../../src/chart/lines/near-words.ts';
import { curvesInSI } from '../../../../src/chart/put-together.ts';
import { photoPoint, type Corners } from '../../../../src/chart/spaces.ts';
import { straightenChart } from '../../../../src/chart/straightened-chart.ts';
import { matchOf } from '../distance.ts';
import { CORNERS, type Paper, type Xy } from '../paper.ts';

export const FLOW: AxisHint = { id: 'x', quantity: 'flow', unit: 'm³/s', scale: 'linear', min: 0, max: 4 };
export const PRESSURE: AxisHint = {
  id: 'y1',
  quantity: 'static_pressure',
  unit: 'Pa',
  scale: 'linear',
  min: 0,
  max: 1000,
};
export const POWER: AxisHint = { id: 'y2', quantity: 'shaft_power', unit: 'kW', scale: 'linear', min: 0, max: 4 };

/** A word whose middle stands at a flow and a height of the frame [Pa of its first scale]. */
export const word = (text: string, flow: number, pressure: number): PrintedWord => {
  const [u, v] = [flow / 4, pressure / 1000];
  return {
    text,
    confidence: 0.9,
    isInside: true,
    box: { u0: u - 0.005 * text.length, u1: u + 0.005 * text.length, v0: v - 0.015, v1: v + 0.015 },
  };
};

/** Finds and names every line of a plot drawn on `CORNERS`. */
export function readPlot(
  paper: Paper,
  axes: readonly AxisHint[] = [FLOW, PRESSURE],
  words: readonly PrintedWord[] = [],
) {
  const corners = CORNERS.map(([x, y]) => photoPoint(x, y)) as unknown as Corners;
  const chart = straightenChart(preparePhoto(paper), corners, axes, false)!;
  const found = findLines(chart.table);
  const named = nameLines(found, chart, axes, words);
  const { curves, doubts } = curvesInSI(chart, axes, named.curves);
  return { found, named, curves, doubts: [...named.doubts, ...doubts] };
}

/** How far a curve's points lie from a course, in shares of the frame. */
export const distanceFrom = (
  points: readonly (readonly number[])[],
  course: (flow: number) => number,
  from: number,
  to: number,
  top = 1000,
) =>
  matchOf(
    points.map(([q, p]): Xy => [q! / 4, p! / top]),
    Array.from({ length: 241 }, (_, i): Xy => {
      const q = from + ((to - from) * i) / 240;
      return [q / 4, course(q) / top];
    }),
  );
