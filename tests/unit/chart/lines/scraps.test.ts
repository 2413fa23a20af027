import { expect, test } from 'vitest';
import { inkIslands } from '../../../../src/chart/lines/ink-islands.ts';
import { scraps } from '../../../../src/chart/lines/scraps.ts';
import type { Sheet } from '../../../../src/chart/sheet.ts';
import type { TracingTable } from '../../../../src/chart/trace/tracing-table.ts';

const [WIDTH, HEIGHT] = [400, 300];
type Stroke = readonly [x: number, y: number, long: number, slope: number];

/** A sheet with strokes three pixels thick on it, and the islands of ink they make. */
function drawn(strokes: readonly Stroke[]) {
  const darkness = new Uint8Array(WIDTH * HEIGHT);
  for (const [x, y, long, slope] of strokes)
    for (let k = 0; k < long; k++)
      for (let d = -1; d <= 1; d++) darkness[Math.round(y + slope * k + d) * WIDTH + x + k] = 200;
  const ink = new Float32Array(3 * WIDTH * HEIGHT);
  darkness.forEach((v, i) => ink.fill(v, 3 * i, 3 * i + 3));
  const sheet = {
    width: WIDTH,
    height: HEIGHT,
    frameWidth: WIDTH,
    frameHeight: HEIGHT,
    darkness,
    ink,
  } as unknown as Sheet;
  const grid = { width: WIDTH, height: HEIGHT, data: new Uint8Array(WIDTH * HEIGHT) };
  const bounds = { left: 2, right: WIDTH - 3, top: 2, bottom: HEIGHT - 3 };
  return { sheet, islands: inkIslands({ sheet, grid, bounds } as unknown as TracingTable, 50) };
}

test('two dashes in one direction are one scrap from the first end to the last', () => {
  const { sheet, islands } = drawn([
    [50, 100, 16, 0.2],
    [78, 105.6, 16, 0.2],
  ]);
  const found = scraps(sheet, islands, []);
  expect(found).toHaveLength(1);
  const { trace, width } = found[0]!;
  expect(trace.x[0]).toBeCloseTo(50, -0.5);
  expect(trace.x.at(-1)! - trace.x[0]!).toBeGreaterThan(38);
  expect(width).toBeGreaterThan(2);
  expect(width).toBeLessThan(4.5);
  // the gap between them was not seen
  expect(Array.from(trace.seen)).toContain(0);
});

test('strokes that turn too much stay apart, and specks are none', () => {
  const { sheet, islands } = drawn([
    [50, 100, 16, 0.2],
    [78, 105.6, 16, 1.6],
    [200, 200, 4, 0],
  ]);
  expect(scraps(sheet, islands, [])).toHaveLength(2);
});

test('what lies on a line already is no scrap', () => {
  const { sheet, islands } = drawn([[50, 100, 20, 0]]);
  const x = Float64Array.from({ length: 80 }, (_, i) => 20 + 2.5 * i);
  const trace = { x, y: x.map(() => 100), seen: x.map(() => 1) };
  expect(scraps(sheet, islands, [{ trace }])).toEqual([]);
});
