import { expect, test } from 'vitest';
import type { Doubt } from '../../../src/chart/doubts.ts';
import type { AxisHint } from '../../../src/chart/hints.ts';
import { stacked, type PlotReading } from '../../../src/chart/read-plot.ts';

const axis = (id: string, quantity: AxisHint['quantity']): AxisHint => ({
  id,
  quantity,
  unit: 'Pa',
  scale: 'linear',
  min: 0,
  max: 1,
});
const doubt = (path: string): Doubt => ({ warning: { code: 'x', text: '', path }, confidence: 0.9, serious: false });
const curve = (id: string, yAxis: string): PlotReading['curves'][number] => ({
  id,
  yAxis,
  quantity: 'static_pressure',
  speed_rpm: null,
  points: [],
  points_px: [],
  expectedError: 0,
  confidence: 1,
});

test('a panel below brings its axes and curves behind those of the plot, and its doubts point at them', () => {
  const flow = axis('x', 'flow');
  const main: PlotReading = {
    axes: [flow, axis('y1', 'static_pressure')],
    curves: [curve('c1', 'y1'), curve('c2', 'y1')],
    doubtsOfAxes: [[], [doubt('/axes/1')]],
    doubts: [doubt('/curves/1')],
  };
  const panel: PlotReading = {
    axes: [flow, axis('y2', 'shaft_power')],
    curves: [curve('c1', 'y2')],
    doubtsOfAxes: [[doubt('/axes/0')], [doubt('/axes/1')]],
    doubts: [doubt('/curves/0'), doubt('/axes/1'), doubt('/curves')],
  };
  const both = stacked(main, panel);
  expect(both.axes.map(({ id }) => id)).toEqual(['x', 'y1', 'y2']);
  expect(both.curves.map(({ id, yAxis }) => [id, yAxis])).toEqual([
    ['c1', 'y1'],
    ['c2', 'y1'],
    ['c3', 'y2'],
  ]);
  expect(both.doubtsOfAxes.map((list) => list.map(({ warning }) => warning.path))).toEqual([
    [],
    ['/axes/1'],
    ['/axes/2'],
  ]);
  expect(both.doubts.map(({ warning }) => warning.path)).toEqual(['/curves/1', '/curves/2', '/axes/2', '/curves']);
});
