import { describe, expect, test } from 'vitest';
import { findOutline } from '../../../src/writing/outline/find-outline.ts';
import { photoOf, platePhoto, type Colour } from './pictures.ts';

type Xy = readonly [number, number];
const [WIDTH, HEIGHT] = [800, 600];
const CORNERS: Xy[] = [
  [150, 120],
  [640, 90],
  [690, 430],
  [120, 470],
];
const GREY: Colour = [120, 120, 120];
const DARK: Colour = [30, 30, 34];
const LIGHT: Colour = [215, 214, 210];

/** Largest distance between corners, share of the diagonal. */
function errorOf(found: readonly Xy[], corners: readonly Xy[]): number {
  const diagonal = Math.hypot(corners[0]![0] - corners[2]![0], corners[0]![1] - corners[2]![1]);
  return Math.max(...corners.map(([x, y], i) => Math.hypot(x - found[i]![0], y - found[i]![1]))) / diagonal;
}

describe('the outline of a plate', () => {
  test.each<[string, Colour, Colour, Colour]>([
    ['light on grey', LIGHT, GREY, DARK],
    ['dark on grey', DARK, GREY, LIGHT],
    ['of another colour, as bright as its ground', [150, 110, 90], [96, 128, 140], DARK],
    ['a little lighter than its ground', [150, 150, 150], [122, 122, 122], DARK],
  ])('%s', (_, plate, ground, letters) => {
    const found = findOutline(platePhoto(WIDTH, HEIGHT, CORNERS, { plate, ground, letters }));
    expect(errorOf(found!.corners, CORNERS)).toBeLessThan(0.012);
    expect(found!.bulges).toEqual([0, 0, 0, 0]);
  });

  test('with round corners is that of the sides carried on', () => {
    const round = (u: number, v: number) => {
      const [x, y] = [Math.max(0, Math.abs(u - 0.5) - 0.42) / 0.08, Math.max(0, Math.abs(v - 0.5) - 0.38) / 0.12];
      return x * x + y * y < 1;
    };
    const found = findOutline(platePhoto(WIDTH, HEIGHT, CORNERS, { plate: LIGHT, ground: GREY, letters: DARK }, round));
    expect(errorOf(found!.corners, CORNERS)).toBeLessThan(0.012);
  });

  test('follows sides that are curved', () => {
    const flat: Xy[] = [
      [150, 150],
      [650, 150],
      [650, 450],
      [150, 450],
    ];
    // 30 pixels of 300 down in the middle, above and below
    const bent = (u: number, v: number) => {
      const bow = 0.4 * u * (1 - u);
      return u > 0 && u < 1 && v > bow && v < 1 + bow;
    };
    const found = findOutline(platePhoto(WIDTH, HEIGHT, flat, { plate: LIGHT, ground: GREY, letters: LIGHT }, bent));
    const [top, right, bottom, left] = found!.bulges;
    expect(top).toBeGreaterThan(-38);
    expect(top).toBeLessThan(-22);
    expect(bottom).toBeGreaterThan(22);
    expect(bottom).toBeLessThan(38);
    expect([right, left]).toEqual([0, 0]);
  });

  test('an even wall has none', () => {
    expect(findOutline(photoOf(WIDTH, HEIGHT, () => GREY))).toBeNull();
  });
});
