import type { ChartTruth } from '../../fixtures/generate/photo/truth.ts';
import { randomFrom } from '../../fixtures/generate/random.ts';
import type { AxisHint, ChartHints, SeedHint } from '../../src/chart/index.ts';

/** How far a finger may be off a corner, pixels. */
const FINGER_px = 25;

/** The part of the truth that hints are about: the primary curves and their axes. */
export function hintedPart(truth: ChartTruth): ChartTruth {
  const curves = truth.chart.curves.filter((c) => c.primary);
  const axes = truth.chart.axes.filter((a) => a.id === 'x' || curves.some((c) => c.yAxis === a.id));
  return { ...truth, chart: { ...truth.chart, curves, axes } };
}

/** What a person would mark: corners as a finger puts them, both ends of each scale, a tap on each curve. */
export function hintsFor({ id, chart }: ChartTruth): Partial<ChartHints> {
  const random = randomFrom([...id].reduce((sum, c) => Math.imul(sum, 31) + c.charCodeAt(0), 7));
  return {
    frameCorners_px: chart.frameCornersPx.map(([x, y]) => [
      x + random.whole(-FINGER_px, FINGER_px),
      y + random.whole(-FINGER_px, FINGER_px),
    ]) as ChartHints['frameCorners_px'],
    axes: chart.axes.map(
      ({ id: axis, quantity, unit, scale, min, max }) => ({ id: axis, quantity, unit, scale, min, max }) as AxisHint,
    ),
    seeds: chart.curves.map(
      (c) => ({ yAxis: c.yAxis, quantity: c.quantity, speed_rpm: c.speed_rpm, point_px: c.seedPx }) as SeedHint,
    ),
  };
}
