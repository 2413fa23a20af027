import { expect, test } from 'vitest';
import type { PageLine } from '../../../src/picture/lines/page-lines.ts';
import { ladderNodes } from '../../../src/readings-sheet/table/ladder.ts';

const level = (y: number, from: number, to: number): PageLine => ({
  upright: false,
  isDark: true,
  from,
  to,
  middle: (from + to) / 2,
  c: [y, 0, 0],
  strength: 50,
  cover: 1,
});

/** A table that gets narrower downwards: its left side runs from (100, 0) to (140, 400). */
const rungs = Array.from({ length: 9 }, (_, k) => level(50 * k, 100 + 5 * k, 700 - 5 * k));

test('the sides of a table of level lines go through most of their ends, whatever one of them runs into', () => {
  const nodes = ladderNodes(rungs.map((rung, k) => (k === 4 ? { ...rung, from: 20 } : rung)));
  expect(nodes).toHaveLength(9);
  nodes.forEach(([[left, y], [right]], k) => {
    expect(left).toBeCloseTo(100 + 5 * k, 0);
    expect(right).toBeCloseTo(700 - 5 * k, 0);
    expect(y).toBe(50 * k);
  });
});

test('a fold and the edge of the paper, which end on neither side, are no rulings', () => {
  const nodes = ladderNodes([...rungs, level(225, 20, 790), level(-60, 30, 780)]);
  expect(nodes.map(([[, y]]) => y).sort((a, b) => a - b)).toEqual(rungs.map((_, k) => 50 * k));
});
