import { expect, test } from 'vitest';
import { isCutOff } from '../../../src/readings-sheet/table/cut-off.ts';
import type { Outline } from '../../../src/writing/index.ts';

const outline = (...corners: [number, number][]) => ({ corners, bulges: [0, 0, 0, 0] }) as unknown as Outline;

test('a sheet whose right side is the photo`s own is cut off', () => {
  expect(isCutOff(outline([80, 60], [1190, 70], [1185, 790], [70, 820]), 1200, 900)).toBe(true);
});

test('a sheet that lies within the photo is whole, even where one corner touches the border', () => {
  expect(isCutOff(outline([80, 60], [1100, 70], [1090, 790], [70, 820]), 1200, 900)).toBe(false);
  expect(isCutOff(outline([80, 5], [1100, 70], [1090, 790], [70, 820]), 1200, 900)).toBe(false);
});
