import { describe, expect, test } from 'vitest';
import { blotsByCell } from '../../../src/readings-sheet/cells/cell-blots.ts';
import { findBlots } from '../../../src/readings-sheet/ink/blots.ts';
import { isBroken } from '../../../src/readings-sheet/ink/broken-ink.ts';
import { takeOutLong } from '../../../src/readings-sheet/ink/long-strokes.ts';
import { withoutRulings } from '../../../src/readings-sheet/ink/without-rulings.ts';
import type { TableSurface } from '../../../src/readings-sheet/table/table-surface.ts';

const [WIDTH, HEIGHT] = [400, 300];
const blank = () => ({ width: WIDTH, height: HEIGHT, values: new Float32Array(WIDTH * HEIGHT) });
type Field = ReturnType<typeof blank>;

/** Ink between two corners, far sides exclusive. */
function fill({ values }: Field, x0: number, y0: number, x1: number, y1: number): void {
  for (let y = y0; y < y1; y++) values.fill(0.6, y * WIDTH + x0, y * WIDTH + x1);
}

const tableOf = (xs: readonly number[], ys: readonly number[], drawn: TableSurface['drawn']): TableSurface => ({
  surface: { width: WIDTH, height: HEIGHT, photo: null as never, photoPixels: 1, toPhoto: (x, y) => [x, y] },
  xs,
  ys,
  drawn,
  rowHeight: 60,
});

describe('ink', () => {
  test('in dots is in pieces, and whole where they are taken together', () => {
    const field = blank();
    // fives of two pieces that reach past each other, one pixel apart
    for (const x of [60, 120, 180]) {
      fill(field, x, 100, x + 18, 110);
      fill(field, x + 19, 104, x + 24, 130);
      fill(field, x + 6, 118, x + 24, 130);
    }
    expect(isBroken(findBlots(field, 0.2, 6))).toBe(true);
    const whole = findBlots(field, 0.2, 6, 2);
    expect(whole).toHaveLength(3);
    expect(isBroken(whole)).toBe(false);
  });

  test('of figures on a fold is left when the fold is taken out', () => {
    const field = blank();
    fill(field, 0, 150, WIDTH, 153);
    for (const x of [60, 150, 300]) fill(field, x, 130, x + 18, 165);
    expect(findBlots(field, 0.2, 6)).toHaveLength(1);
    expect(takeOutLong(field, findBlots(field, 0.2, 6), [WIDTH, HEIGHT])).toBe(true);
    const left = findBlots(field, 0.2, 6);
    expect(left.map(({ x0, y0, y1 }) => [x0, y0, y1])).toEqual([60, 150, 300].map((x) => [x, 130, 165]));
  });

  test('of stems under each other is no ruling, a line without gaps is', () => {
    const field = blank();
    for (let y = 10; y < HEIGHT - 40; y += 60) fill(field, 100, y, 104, y + 30);
    fill(field, 250, 0, 253, HEIGHT);
    const { field: clean, drawn } = withoutRulings(
      { darkness: field, stroke: 0.6, least: 0.2 },
      tableOf([20, 380], [5, 295], { xs: [102, 251], ys: [] }),
    );
    expect(drawn.xs).toEqual([251]);
    expect(clean.values[40 * WIDTH + 251]).toBe(0);
    expect(clean.values[20 * WIDTH + 102]).toBeCloseTo(0.6);
  });
});

test('pencil on squared paper keeps what the squares cross, and the squares go', () => {
  const field = blank();
  for (let y = 10; y < HEIGHT; y += 25) for (let x = 0; x < WIDTH; x++) field.values[y * WIDTH + x] = 0.07;
  for (let x = 10; x < WIDTH; x += 25) for (let y = 0; y < HEIGHT; y++) field.values[y * WIDTH + x] = 0.07;
  // a stroke along a square's side, and a ruling
  for (let y = 95; y < 125; y++) field.values.fill(0.2, y * WIDTH + 159, y * WIDTH + 163);
  for (let y = 200; y < 203; y++) field.values.fill(0.2, y * WIDTH, (y + 1) * WIDTH);
  const { field: clean, drawn } = withoutRulings(
    { darkness: field, stroke: 0.2, least: 0.06 },
    tableOf([0, WIDTH], [0, HEIGHT], { xs: [], ys: [] }),
  );
  expect(drawn.ys.map(Math.round)).toEqual([201]);
  const [stroke, ...others] = findBlots(clean, 0.06, 6);
  expect(others).toEqual([]);
  expect(stroke).toMatchObject({ x0: 159, x1: 163, y0: 95, y1: 125 });
});

describe('a cell', () => {
  const cut = (xs: readonly number[], drawn: readonly number[]) => {
    const field = blank();
    for (const x of [120, 145, 170, 195]) fill(field, x, 110, x + 18, 140);
    const table = tableOf(xs, [90, 160], { xs: drawn, ys: [] });
    return blotsByCell(findBlots(field, 0.2, 6), table, WIDTH)[0]!.map(({ isCut }) => isCut);
  };

  test('whose number goes on in the next one is cut, unless a ruling parts the two', () => {
    expect(cut([60, 166, 300], [])).toEqual([true, true]);
    expect(cut([60, 166, 300], [166])).toEqual([false, false]);
  });

  test('with a figure lying across its side is cut, ruling or not', () => {
    expect(cut([60, 154, 300], [154])).toEqual([true, true]);
  });

  test('with its whole number is not', () => {
    expect(cut([60, 260, 380], [])).toEqual([false, false]);
  });
});
