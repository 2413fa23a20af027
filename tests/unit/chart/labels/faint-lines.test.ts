import { describe, expect, test } from 'vitest';
import { findPieces } from '../../../../src/chart/labels/pieces.ts';
import type { Printed } from '../../../../src/chart/labels/faint-lines.ts';

const WIDTH = 900;
const HEIGHT = 600;
const FRAME = { x0: 150, y0: 100, x1: 800, y1: 480 };
/** Strokes of a figure, 18 px high. */
const FIGURE = [
  [0, 0, 3, 18],
  [0, 15, 10, 18],
  [7, 0, 10, 18],
  [0, 0, 10, 3],
] as const;

/** A chart with a frame, a thick curve and figures beside it, on paper ruled every so many pixels. */
function chart(ruling: { every: number; ink: number } | null, figureInk = 140): Printed {
  const ink = new Uint8Array(WIDTH * HEIGHT);
  const box = (x0: number, y0: number, x1: number, y1: number, level: number) => {
    for (let y = y0; y < y1; y++)
      for (let x = x0; x < x1; x++) ink[y * WIDTH + x] = Math.max(ink[y * WIDTH + x]!, level);
  };
  if (ruling)
    for (let at = 20; at < WIDTH; at += ruling.every) {
      box(at, 10, at + 2, HEIGHT - 10, ruling.ink);
      if (at < HEIGHT) box(10, at, WIDTH - 10, at + 2, ruling.ink);
    }
  for (const y of [FRAME.y0, FRAME.y1]) box(FRAME.x0 - 1, y - 1, FRAME.x1 + 1, y + 1, 150);
  for (const x of [FRAME.x0, FRAME.x1]) box(x - 1, FRAME.y0, x + 1, FRAME.y1, 150);
  for (let x = FRAME.x0; x < FRAME.x1; x++) {
    const y = Math.round(150 + (x - FRAME.x0) ** 2 / 2000);
    box(x, y, x + 1, y + 5, 150);
  }
  for (const [x, y] of PLACES) for (const [a, b, c, d] of FIGURE) box(x + a, y + b, x + c, y + d, figureInk);
  return { width: WIDTH, height: HEIGHT, frame: FRAME, ink };
}

const PLACES = [
  [100, 130],
  [100, 230],
  [100, 330],
  [300, 520],
  [500, 520],
] as const;

const figuresOf = (all: Printed) =>
  findPieces(all)
    .list.filter((p) => p.x1 - p.x0 < 14 && p.y1 - p.y0 < 22 && p.y1 - p.y0 > 14)
    .map((p) => [p.x0, p.y0]);

describe('figures on ruled paper', () => {
  test('each figure is a piece by itself, as on plain paper', () => {
    expect(figuresOf(chart(null))).toEqual(expect.arrayContaining(PLACES.map((p) => [...p])));
    for (const ink of [18, 30, 55])
      expect(figuresOf(chart({ every: 13, ink }))).toEqual(expect.arrayContaining(PLACES.map((p) => [...p])));
  });

  test('between the figures nothing is left of the ruling', () => {
    expect(findPieces(chart({ every: 13, ink: 30 })).list.length).toBe(findPieces(chart(null)).list.length);
  });

  test('a grid as dark as the print stays what it is: letters would be cut by its lines else', () => {
    const { list } = findPieces(chart({ every: 100, ink: 140 }));
    expect(Math.max(...list.map((p) => p.x1 - p.x0))).toBeGreaterThan(500);
  });
});
