import { expect, test } from 'vitest';
import { isGentle } from '../../../../src/chart/frame/gentle-course.ts';

const LENGTH = 2700;

test('the side of a page that curls or waves is gentle', () => {
  expect(isGentle(() => 3, LENGTH)).toBe(true);
  expect(isGentle((t) => 60 * (t / LENGTH) ** 3 - 5, LENGTH)).toBe(true);
  expect(isGentle((t) => 15 * Math.sin((2 * Math.PI * t) / LENGTH + 0.4), LENGTH)).toBe(true);
});

test('one that steps over to a rule beside it and back is not', () => {
  const step = (t: number, at: number): number => 1 / (1 + Math.exp(-(t - at) / 40));
  expect(isGentle((t) => 60 * (step(t, 500) - step(t, 2200)), LENGTH)).toBe(false);
});
