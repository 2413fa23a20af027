import { expect, test } from 'vitest';
import { isRoundBox } from '../../../../src/chart/lines/box-edges.ts';
import type { Trace } from '../../../../src/chart/trace/stroke-centre.ts';

/** A trace through points, one every 2.5 px. */
function through(corners: readonly (readonly [number, number])[]): Trace {
  const x: number[] = [];
  const y: number[] = [];
  corners.slice(1).forEach(([x1, y1], k) => {
    const [x0, y0] = corners[k]!;
    const steps = Math.round(Math.hypot(x1 - x0, y1 - y0) / 2.5);
    for (let i = 0; i < steps; i++) {
      x.push(x0 + ((x1 - x0) * i) / steps);
      y.push(y0 + ((y1 - y0) * i) / steps);
    }
  });
  return { x: Float64Array.from(x), y: Float64Array.from(y), seen: new Float64Array(x.length).fill(1) };
}

const around = Array.from({ length: 46 }, (_, k) => (k * Math.PI) / 90);

test('two sides of a box round a corner are no curve, whichever comes first', () => {
  const right = through([
    [100, 50],
    [300, 54],
    [304, 140],
  ]);
  const left = through([
    [100, 140],
    [102, 50],
    [300, 54],
  ]);
  expect(isRoundBox(right)).toBe(true);
  expect(isRoundBox(left)).toBe(true);
});

test('a curve that falls from level to steep is one, and so is a polygon through test points', () => {
  const quarter = through(around.map((a) => [100 + 200 * Math.sin(a), 300 - 200 * Math.cos(a)]));
  const polygon = through([
    [100, 50],
    [250, 54],
    [300, 140],
  ]);
  expect(isRoundBox(quarter)).toBe(false);
  expect(isRoundBox(polygon)).toBe(false);
});
