import { describe, expect, test } from 'vitest';
import { outlineAroundLetters } from '../../../src/writing/outline/around-letters.ts';
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

describe('where letters stand, on a plate whose edges do not show', () => {
  /** A plate of its ground's own colour, turned by so much. */
  const turnedBy = (angle: number): Xy[] =>
    [
      [-260, -150],
      [260, -150],
      [260, 150],
      [-260, 150],
    ].map(([x, y]): Xy => {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      return [400 + x! * c - y! * s, 300 + x! * s + y! * c];
    });

  test.each([0, 0.3, -0.35])('a rectangle around them runs along their lines, turned by %f rad', (angle) => {
    const corners = turnedBy(angle);
    const photo = platePhoto(WIDTH, HEIGHT, corners, { plate: GREY, ground: GREY, letters: DARK });
    const [a, b, , d] = outlineAroundLetters(photo)!.corners as unknown as [Xy, Xy, Xy, Xy];
    expect(Math.atan2(b[1] - a[1], b[0] - a[0])).toBeCloseTo(angle, 1);
    // letters reach from a tenth to eight tenths of the width and an eighth to nine tenths of the height
    const [wide, high] = [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(d[0] - a[0], d[1] - a[1])];
    expect(wide).toBeGreaterThan(0.7 * 520);
    expect(wide).toBeLessThan(520 + 60);
    expect(high).toBeGreaterThan(0.74 * 300);
    expect(high).toBeLessThan(300 + 60);
  });

  test('nothing where there are no letters', () => {
    expect(
      outlineAroundLetters(platePhoto(WIDTH, HEIGHT, CORNERS, { plate: LIGHT, ground: GREY, letters: LIGHT })),
    ).toBe(null);
  });
});
