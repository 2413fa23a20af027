import { expect, test } from 'vitest';
import type { ChartCurve } from '../../../web/api.ts';
import { curveUnder } from '../../../web/photo/curve-under.ts';

const curve = (points_px: [number, number][]): ChartCurve => ({
  id: 'c',
  yAxis: 'y1',
  quantity: 'static_pressure',
  speed_rpm: null,
  points: [],
  confidence: 1,
  points_px,
});
const curves = [
  curve([
    [0, 100],
    [1000, 100],
  ]),
  curve([
    [0, 0],
    [1000, 200],
  ]),
];

test('a finger near a curve is on the nearest one, elsewhere on none', () => {
  expect(curveUnder(curves, [200, 96], 1000)).toBe(0);
  expect(curveUnder(curves, [200, 43], 1000)).toBe(1);
  expect(curveUnder(curves, [200, 70], 1000)).toBe(-1);
  // beyond the end of a curve it is on none
  expect(curveUnder(curves, [1020, 100], 1000)).toBe(-1);
  expect(curveUnder([], [0, 0], 1000)).toBe(-1);
});
