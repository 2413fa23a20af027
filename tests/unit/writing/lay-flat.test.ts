import { describe, expect, test } from 'vitest';
import { flatGrey, layFlat } from '../../../src/writing/index.ts';
import { turned } from '../../../src/writing/lay-flat.ts';
import { photoOf } from './pictures.ts';

type Xy = readonly [number, number];
const CORNERS: [Xy, Xy, Xy, Xy] = [
  [20, 30],
  [180, 20],
  [170, 120],
  [10, 110],
];
/** Brightness grows to the right, a step of grey a pixel. */
const photo = photoOf(200, 150, (x) => [x, x, x]);

describe('a surface laid flat', () => {
  const surface = layFlat(photo, { corners: CORNERS, bulges: [0, 0, 0, 0] })!;
  const corners = ({ width, height, toPhoto }: typeof surface) => [
    toPhoto(0, 0),
    toPhoto(width, 0),
    toPhoto(width, height),
    toPhoto(0, height),
  ];

  test('has its corners where they are in the photo', () => {
    corners(surface).forEach(([x, y], i) => {
      expect(x).toBeCloseTo(CORNERS[i]![0]);
      expect(y).toBeCloseTo(CORNERS[i]![1]);
    });
  });

  test('is enlarged no more than shows anything new', () => {
    expect(1 / surface.photoPixels).toBeCloseTo(2.2);
  });

  test('shows what stands in the photo', () => {
    const grey = flatGrey(surface);
    const [x, y] = [Math.round(surface.width / 3), Math.round(surface.height / 2)];
    expect(grey.values[y * grey.width + x]).toBeCloseTo(surface.toPhoto(x, y)[0], 0);
  });

  test('the middle of a side that bulges lies outside the chord, its ends do not', () => {
    const curved = layFlat(photo, { corners: CORNERS, bulges: [8, 0, 0, 0] })!;
    const [straight, bent] = [surface, curved].map((s) => s.toPhoto(s.width / 2, 0));
    expect(Math.hypot(bent![0] - straight![0], bent![1] - straight![1])).toBeCloseTo(8);
    expect(bent![1]).toBeLessThan(straight![1]);
    expect(curved.toPhoto(0, 0)[1]).toBeCloseTo(30);
    expect(curved.toPhoto(curved.width / 2, curved.height)[1]).toBeCloseTo(
      surface.toPhoto(surface.width / 2, surface.height)[1],
    );
  });

  test.each([1, 2, 3] as const)('turned %i times begins at another corner', (turns) => {
    corners(turned(surface, turns)).forEach(([x, y], i) => {
      const [u, v] = CORNERS[(i + turns) % 4]!;
      expect(x).toBeCloseTo(u);
      expect(y).toBeCloseTo(v);
    });
  });

  test('corners on one line are no surface', () => {
    const flat: [Xy, Xy, Xy, Xy] = [
      [0, 0],
      [10, 0],
      [20, 0],
      [0, 10],
    ];
    expect(layFlat(photo, { corners: flat, bulges: [0, 0, 0, 0] })).toBeNull();
  });
});
