import { expect, test } from 'vitest';
import { lostPoints } from '../../../src/readings-sheet/doubts/lost-points.ts';
import { unitCalled } from '../../../src/units/names.ts';

const column = (quantity: 'current_A' | 'inputPower_W', unit: string, texts: readonly string[]) => ({
  quantity,
  unit: unitCalled(unit),
  values: texts.map((text) => ({ text, value: Number(text), chance: 0.99 })),
});

test('currents of two figures without a single point are doubted', () => {
  expect(lostPoints([column('current_A', 'A', ['43', '41', '40'])])).toEqual([true]);
});

test('currents with a point, or of hundreds, are not', () => {
  expect(lostPoints([column('current_A', 'A', ['4.3', '41', '40'])])).toEqual([false]);
  expect(lostPoints([column('current_A', 'A', ['143', '141', '140'])])).toEqual([false]);
});

test('power and current that no motor has together are both doubted', () => {
  const current = column('current_A', 'A', ['4.3', '4.1', '4.0']);
  expect(lostPoints([column('inputPower_W', 'W', ['20', '21', '22']), current])).toEqual([true, true]);
  expect(lostPoints([column('inputPower_W', 'W', ['2020', '2080', '2130']), current])).toEqual([false, false]);
  expect(lostPoints([column('inputPower_W', 'kW', ['2.02', '2.08', '2.13']), current])).toEqual([false, false]);
});
