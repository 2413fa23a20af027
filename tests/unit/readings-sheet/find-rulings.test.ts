import { describe, expect, test } from 'vitest';
import { findRulings } from '../../../src/readings-sheet/ink/find-rulings.ts';

const [WIDTH, HEIGHT] = [960, 720];

/** Ink wherever a shape says so. */
function fieldOf(isInk: (x: number, y: number) => boolean) {
  const values = new Float32Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++) for (let x = 0; x < WIDTH; x++) if (isInk(x, y)) values[y * WIDTH + x] = 0.6;
  return { width: WIDTH, height: HEIGHT, values };
}

describe('long lines in ink', () => {
  test('are followed where they lean and sway, and end where they end', () => {
    const course = (x: number) => 300 + 0.02 * x + 2 * Math.sin(x / 90);
    const [line, ...others] = findRulings(
      fieldOf((x, y) => x >= 96 && x < 864 && Math.abs(y - course(x)) < 1.6),
      0.2,
    ).rulings;
    expect(others).toEqual([]);
    expect(line).toMatchObject({ isLevel: true, from: 96, to: 864 });
    for (const x of [150, 480, 800]) expect(Math.abs(line!.course(x) - course(x))).toBeLessThan(2);
  });

  test('are neither stems of figures under each other nor a number struck out nor a shadow', () => {
    const isStem = (x: number, y: number) => x >= 200 && x < 204 && y % 64 < 31;
    const isStruck = (x: number, y: number) => Math.abs(y - 400) < 2 && x > 500 && x < 620;
    const isShadow = (x: number, y: number) => x > 700 && x < 760 && y < HEIGHT;
    expect(
      findRulings(
        fieldOf((x, y) => isStem(x, y) || isStruck(x, y) || isShadow(x, y)),
        0.2,
      ).rulings,
    ).toEqual([]);
  });

  test('many of one darkness are the paper, the darker ones among them are drawn', () => {
    const { width, height, values } = fieldOf((x, y) => y % 24 === 0 || x < 0);
    for (let i = 0; i < values.length; i++) values[i]! *= 0.25;
    for (const y of [240, 480]) values.fill(0.6, y * width, (y + 2) * width);
    const { rulings, paper } = findRulings({ width, height, values }, 0.1);
    expect(rulings.map(({ at }) => Math.round(at))).toEqual([241, 481]);
    expect(paper).toBeCloseTo(0.15);
  });
});
