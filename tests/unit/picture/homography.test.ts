import { expect, test } from 'vitest';
import { homographyOf, inverseOf, project } from '../../../src/picture/homography.ts';

const square = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;
const seen = [
  [120, 640],
  [980, 700],
  [900, 90],
  [180, 140],
] as const;

test('takes four points to four others', () => {
  const h = homographyOf(square, seen)!;
  square.forEach(([u, v], k) => {
    const [x, y] = project(h, u, v);
    expect(x).toBeCloseTo(seen[k]![0], 9);
    expect(y).toBeCloseTo(seen[k]![1], 9);
  });
});

test('keeps straight lines straight: the diagonals cross where the middle goes', () => {
  const h = homographyOf(square, seen)!;
  const [x, y] = project(h, 0.5, 0.5);
  const onLine = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]) =>
    (bx - ax) * (y - ay) - (by - ay) * (x - ax);
  expect(onLine(seen[0], seen[2])).toBeCloseTo(0, 6);
  expect(onLine(seen[1], seen[3])).toBeCloseTo(0, 6);
});

test('there and back is where one started', () => {
  const h = homographyOf(square, seen)!;
  const back = inverseOf(h);
  for (const [u, v] of [
    [0.1, 0.9],
    [0.5, 0.2],
    [1.05, -0.04],
  ] as const) {
    const [x, y] = project(h, u, v);
    const [bu, bv] = project(back, x, y);
    expect(bu).toBeCloseTo(u, 9);
    expect(bv).toBeCloseTo(v, 9);
  }
});

test('three corners on one line give no map', () => {
  expect(
    homographyOf(square, [
      [0, 0],
      [1, 1],
      [2, 2],
      [0, 3],
    ]),
  ).toBeNull();
});

test('wants four points each', () => {
  expect(() => homographyOf([[0, 0]], [[0, 0]])).toThrow(
    new RangeError('homography: expected four points each, received 1 and 1'),
  );
});
