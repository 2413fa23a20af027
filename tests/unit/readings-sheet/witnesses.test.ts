import { describe, expect, test } from 'vitest';
import { exchanged } from '../../../src/readings-sheet/columns/exchanged.ts';
import { contradicted } from '../../../src/readings-sheet/doubts/column-witness.ts';
import { mixesOnesAndSevens } from '../../../src/readings-sheet/doubts/odd-hand.ts';
import { looksLikeNumber } from '../../../src/readings-sheet/heads/value-words.ts';
import type { ColumnQuantity } from '../../../src/readings-sheet/quantities.ts';
import { unitCalled } from '../../../src/units/names.ts';

const column = (quantity: ColumnQuantity, values: readonly number[]) => ({
  quantity,
  values: values.map((value) => ({ text: String(value), value, chance: 1 })),
});

describe('columns of one test', () => {
  const opening = column('opening_pct', [0, 20, 40, 60, 80, 100]);
  const suction = column('staticPressure_Pa', [1700, 1690, 1500, 1100, 600, 20]);
  const flow = column('flow_m3_s', [0, 0.2, 0.4, 0.6, 0.8, 0.9]);

  test('agree whichever way the test was run', () => {
    expect(contradicted([opening, suction, flow])).toEqual([false, false, false]);
    const back = [opening, suction, flow].map((one) => ({ ...one, values: one.values.toReversed() }));
    expect(contradicted(back)).toEqual([false, false, false]);
  });

  test('show which of them goes the wrong way', () => {
    const wrong = column('flow_m3_s', [12, 11.9, 11, 8, 6, 0.1]);
    expect(contradicted([opening, suction, wrong])).toEqual([false, false, true]);
  });

  test('show two pressures under each other’s names, and exchange them', () => {
    const dynamic = [0, 148, 366, 631, 1253, 2787];
    const swapped = [
      opening,
      column('velocityPressure_Pa', [1700, 1690, 1500, 1100, 600, 20]),
      column('staticPressure_Pa', dynamic),
    ];
    expect(contradicted(swapped)).toEqual([true, true, true]);
    const named = swapped.map(({ quantity }) => ({ quantity, unit: unitCalled('Pa'), sureness: 1 }));
    const right = exchanged(
      named,
      swapped.map(({ values }) => values),
    );
    expect(right.map(({ quantity }) => quantity)).toEqual(['opening_pct', 'staticPressure_Pa', 'velocityPressure_Pa']);
    expect(right.map(({ sureness }) => sureness)).toEqual([1, 0.5, 0.5]);
    const alone = swapped.slice(1);
    expect(contradicted(alone)).toEqual([true, true]);
    const settled = [suction, column('velocityPressure_Pa', dynamic)];
    expect(contradicted(settled)).toEqual([false, false]);
  });

  test('say nothing of current and speed', () => {
    expect(contradicted([opening, column('current_A', [5, 4, 3, 2, 1, 0.5])])).toEqual([false, false]);
  });
});

test('a hand without ones and full of sevens is doubted, others are not', () => {
  expect(mixesOnesAndSevens(['77815', '77972', '75252', '8657', '7.55', '7.67', '7.77', '7.84'])).toBe(true);
  expect(mixesOnesAndSevens(['17815', '17972', '15252', '8651', '1.55', '1.67', '1.77', '1.84'])).toBe(false);
  expect(mixesOnesAndSevens(['77', '75'])).toBe(false);
});

test('figures read as letters look like a number, words and units do not', () => {
  for (const text of ['50', 'SO', 'So', '38s', '1012', 'GS2']) expect(looksLikeNumber(text), text).toBe(true);
  for (const text of ['Hz', 'mbar', 'V', '°C', 'Motor', '=']) expect(looksLikeNumber(text), text).toBe(false);
});
