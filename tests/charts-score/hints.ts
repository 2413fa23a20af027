import type { ChartTruth } from '../../fixtures/generate/photo/truth.ts';
import { randomFrom } from '../../fixtures/generate/random.ts';
import type { AxisHint, ChartHints, SeedHint } from '../../src/chart/index.ts';

/** How far a finger may be off a corner, pixels. */
const FINGER_px = 25;

/** What a person would mark: corners as a finger puts them, the scales of the pressure, a tap on each primary curve. */
export function hintsFor({ id, chart }: ChartTruth): Partial<ChartHints> {
  const random = randomFrom([...id].reduce((sum, c) => Math.imul(sum, 31) + c.charCodeAt(0), 7));
  const primary = chart.curves.filter((c) => c.primary);
  const used = new Set(['x', ...primary.map((c) => c.yAxis)]);
  return {
    frameCorners_px: chart.frameCornersPx.map(([x, y]) => [
      x + random.whole(-FINGER_px, FINGER_px),
      y + random.whole(-FINGER_px, FINGER_px),
    ]) as ChartHints['frameCorners_px'],
    axes: chart.axes
      .filter((a) => used.has(a.id))
      .map(
        ({ id: axis, quantity, unit, scale, min, max }) => ({ id: axis, quantity, unit, scale, min, max }) as AxisHint,
      ),
    seeds: primary.map(
      (c) => ({ yAxis: c.yAxis, quantity: c.quantity, speed_rpm: c.speed_rpm, point_px: c.seedPx }) as SeedHint,
    ),
  };
}
