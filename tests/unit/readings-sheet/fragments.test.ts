import { expect, test } from 'vitest';
import { hasFragments } from '../../../src/readings-sheet/cells/fragments.ts';
import { passesOver } from '../../../src/readings-sheet/heads/head-number.ts';
import type { Blot } from '../../../src/readings-sheet/ink/blots.ts';

const blot = (x0: number, y0: number, x1: number, y1: number): Blot => {
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2];
  return { x0, y0, x1, y1, cx, cy, pixels: [], level: 1 };
};
const DIGIT = 30;
const number = [blot(0, 0, 18, 30), blot(24, 0, 42, 30)];

test('bits high beside a number are what is left of further figures', () => {
  expect(hasFragments([...number, blot(48, 0, 58, 6)], DIGIT)).toBe(true);
});

test('a point, a speck, a figure’s own flag and what stands far away are not', () => {
  expect(hasFragments([...number, blot(44, 26, 48, 31)], DIGIT)).toBe(false);
  expect(hasFragments([...number, blot(48, 2, 51, 5)], DIGIT)).toBe(false);
  expect(hasFragments([...number, blot(26, -4, 44, 2)], DIGIT)).toBe(false);
  expect(hasFragments([...number, blot(140, 0, 150, 6)], DIGIT)).toBe(false);
});

test('a value in the head stands next to its name: one beyond other ink is doubted', () => {
  const label = {
    quantity: 'airTemperature_C',
    sureness: 1,
    isLetter: false,
    words: [],
    x0: 0,
    x1: 400,
    y0: 0,
    y1: 30,
  } as const;
  const value = { blots: [blot(120, 0, 138, 30)], digit: DIGIT };
  expect(passesOver(label, value, [blot(20, 0, 38, 30), ...value.blots])).toBe(true);
  expect(passesOver(label, value, [blot(20, 22, 26, 30), blot(20, 60, 38, 90), ...value.blots])).toBe(false);
});
