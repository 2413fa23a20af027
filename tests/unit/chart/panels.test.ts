import { expect, test } from 'vitest';
import { mayShareFlow } from '../../../src/chart/page/stacked-panels.ts';
import type { FoundChart } from '../../../src/chart/find-chart.ts';
import { joinedTaps, type PartReading } from '../../../src/chart/join-taps.ts';
import type { FoundAxis } from '../../../src/chart/labels/name-axes.ts';
import { panelsOf, plainAxis, seedsIn } from '../../../src/chart/panels.ts';
import type { ChartReading } from '../../../src/chart/reading.ts';
import { fail, ok } from '../../../src/issues/result.ts';

type Xy = [number, number];
const square = (x: number, y: number): Xy[] => [
  [x, y + 100],
  [x + 100, y + 100],
  [x + 100, y],
  [x, y],
];
const axis = (id: string, quantity: FoundAxis['quantity'], max: number) =>
  ({ id, quantity, unit: 'Pa', scale: 'linear', min: 0, max, confidence: 1 }) as FoundAxis;
const labels = (corners: Xy[], axes: FoundAxis[]) => ({ frame: { corners }, axes, words: [] });
/** A pressure plot with a power plot below it. */
const found = {
  labels: labels(square(0, 0), []),
  axes: [axis('x', 'flow', 3), axis('y1', 'static_pressure', 100)],
  panels: [labels(square(0, 120), [axis('y1', 'shaft_power', 2)])],
} as unknown as FoundChart;

test('a panel’s axis is named on from those of the plot', () => {
  const [panel] = panelsOf(found, {});
  expect(panel!.axes.map(({ id, quantity }) => [id, quantity])).toEqual([
    ['x', 'flow'],
    ['y2', 'shaft_power'],
  ]);
});

test('what was told of a panel’s axis stands, unless it is told of the plot itself', () => {
  const told = { ...plainAxis(axis('y2', 'shaft_power', 5)) };
  const seed = (at: Xy) => ({ yAxis: 'y2', quantity: 'shaft_power' as const, point_px: at });
  expect(panelsOf(found, { axes: [told], seeds: [seed([50, 150])] })[0]!.axes[1]!.max).toBe(5);
  expect(panelsOf(found, { axes: [told], seeds: [seed([50, 50])] })[0]!.axes[1]!.max).toBe(2);
});

test('a tap belongs to the panel it lies in, where it names that panel’s axis', () => {
  const [panel] = panelsOf(found, {});
  const at = (yAxis: string, point_px: Xy, index: number) => ({
    seed: { yAxis, quantity: 'shaft_power' as const, point_px },
    at: index,
  });
  const inside = at('y2', [50, 150], 0);
  expect(seedsIn(panel!, [inside, at('y1', [50, 150], 1), at('y2', [50, 50], 2)])).toEqual([inside]);
});

const reading = (ids: string[], more: Partial<ChartReading> = {}): ChartReading => ({
  frameCorners_px: square(0, 0),
  axes: [],
  curves: ids.map((id) => ({
    id,
    yAxis: 'y1',
    quantity: 'static_pressure',
    speed_rpm: null,
    points: [],
    points_px: [],
    expectedError: 0,
    confidence: 1,
  })),
  confidence: { overall: 0.9, needsReview: false },
  warnings: [],
  ...more,
});
const read = (id: string) => ({ ...axis(id, 'flow', 1), confidence: 1 });

test('curves and remarks of two panels stand at the places of their taps among all', () => {
  const main: PartReading = {
    read: ok(reading(['c1'], { axes: [read('x'), read('y1')] })),
    seedAt: [1],
    axisAt: [0, 1],
  };
  const panel: PartReading = {
    read: ok(
      reading(['c1', 'c2'], {
        axes: [read('x'), read('y2')],
        warnings: [
          { code: 'a', text: '', path: '/seeds/1' },
          { code: 'b', text: '', path: '/axes/1/max' },
        ],
        confidence: { overall: 0.5, needsReview: true },
      }),
    ),
    seedAt: [0, 2],
    axisAt: [0, 2],
  };
  const joined = joinedTaps(reading([], { axes: [read('x'), read('y1')] }), [main, panel]);
  if (!joined.ok) throw new Error('not read');
  expect(joined.value.curves.map(({ id }) => id)).toEqual(['c1', 'c2', 'c3']);
  expect(joined.value.axes.map(({ id }) => id)).toEqual(['x', 'y1', 'y2']);
  expect(joined.value.warnings.map(({ path }) => path)).toEqual(['/seeds/2', '/axes/2/max']);
  expect(joined.value.confidence).toEqual({ overall: 0.5, needsReview: true });
});

test('a tap that meets no line in one panel is told at its place; with no line anywhere there is no reading', () => {
  const missed: PartReading = {
    read: fail([{ code: 'contradiction', path: '/seeds/0/point_px', message: 'No line.' }]),
    seedAt: [1],
    axisAt: [0, 1],
  };
  const plot = reading([]);
  const joined = joinedTaps(plot, [missed, { read: ok(reading(['c1'])), seedAt: [0], axisAt: [] }]);
  if (!joined.ok) throw new Error('not read');
  expect(joined.value.warnings).toEqual([{ code: 'no-line-under-tap', text: 'No line.', path: '/seeds/1/point_px' }]);
  expect(joined.value.confidence.needsReview).toBe(true);
  expect(joinedTaps(plot, [missed]).ok).toBe(false);
});

test('plots over each other with flow scales of their own are two charts', () => {
  const scale = (quantity: 'flow' | 'shaft_power', max: number, unit: string) => ({ quantity, unit, min: 0, max });
  const power = scale('shaft_power', 3, 'kW');
  expect(mayShareFlow([scale('flow', 4.5, 'm³/s')], [power])).toBe(true);
  expect(mayShareFlow([scale('flow', 4.5, 'm³/s')], [scale('flow', 4.5, 'm³/s'), power])).toBe(true);
  expect(mayShareFlow([scale('flow', 4.5, 'm³/s')], [scale('flow', 5000, 'L/s'), power])).toBe(false);
  expect(mayShareFlow([scale('flow', 5, 'm³/s')], [scale('flow', 5, 'm³/h'), power])).toBe(false);
});
