import { describe, expect, test } from 'vitest';
import { preparePhoto } from '../../../src/picture/raster.ts';
import { findLattice } from '../../../src/readings-sheet/table/find-lattice.ts';

type Xy = readonly [number, number];
const [WIDTH, HEIGHT] = [900, 700];

/** A photo of bare paper with dark lines on it, three pixels wide. */
function photoOf(lines: readonly (readonly [Xy, Xy])[], darkness = 120) {
  const rgb = new Uint8Array(WIDTH * HEIGHT * 3).fill(215);
  for (const [[ax, ay], [bx, by]] of lines) {
    const steps = Math.ceil(Math.hypot(bx - ax, by - ay) * 2);
    for (let i = 0; i <= steps; i++) {
      const [x, y] = [ax + ((bx - ax) * i) / steps, ay + ((by - ay) * i) / steps].map(Math.round) as [number, number];
      for (let v = y - 1; v <= y + 1; v++)
        for (let u = x - 1; u <= x + 1; u++) rgb.fill(215 - darkness, 3 * (v * WIDTH + u), 3 * (v * WIDTH + u) + 3);
    }
  }
  return preparePhoto({ width: WIDTH, height: HEIGHT, rgb });
}

/** A place of a table seen aslant: 0..1 across and down. */
const seen = (s: number, t: number): Xy => {
  const w = 1 + 0.15 * s + 0.1 * t;
  return [(150 + 640 * s + 30 * t) / w, (90 + 70 * s + 520 * t) / w];
};
const COLUMNS = [0, 0.15, 0.4, 0.7, 1];
const ROWS = [0, 0.16, 0.3, 0.44, 0.58, 0.72, 0.86, 1];
const level = (t: number, from = 0, to = 1): [Xy, Xy] => [seen(from, t), seen(to, t)];
const upright = (s: number): [Xy, Xy] => [seen(s, 0), seen(s, 1)];
const table = [...ROWS.map((t) => level(t)), ...COLUMNS.map((s) => upright(s))];

const farthest = (nodes: readonly (readonly Xy[])[]) =>
  Math.max(
    ...nodes.flatMap((row, r) =>
      row.map(([x, y], c) => Math.hypot(x - seen(COLUMNS[c]!, ROWS[r]!)[0], y - seen(COLUMNS[c]!, ROWS[r]!)[1])),
    ),
  );

describe('the rulings of a table', () => {
  test('seen aslant, every crossing is found within two pixels', () => {
    const { nodes } = findLattice(photoOf(table))!;
    expect([nodes.length, nodes[0]!.length]).toEqual([ROWS.length, COLUMNS.length]);
    expect(farthest(nodes)).toBeLessThan(2);
  });

  test('a fold that runs on to both edges of the paper is none of them', () => {
    const { nodes } = findLattice(photoOf([...table, level(0.51, -0.2, 1.2)]))!;
    expect(nodes.length).toBe(ROWS.length);
    expect(farthest(nodes)).toBeLessThan(2);
  });

  test('where the outer sides are not drawn, the ends of the level lines stand for them', () => {
    const { nodes, isDrawn } = findLattice(
      photoOf([...ROWS.map((t) => level(t)), ...COLUMNS.slice(1, -1).map((s) => upright(s))]),
    )!;
    expect(isDrawn.upright).toEqual([false, true, true, true, false]);
    expect(farthest(nodes)).toBeLessThan(6);
  });

  test('bare paper has no table', () => {
    expect(findLattice(photoOf([]))).toBeNull();
    expect(findLattice(photoOf([level(0.2), level(0.8)]))).toBeNull();
  });
});
