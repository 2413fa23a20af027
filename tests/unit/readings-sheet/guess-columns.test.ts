import { describe, expect, test } from 'vitest';
import { guessColumns } from '../../../src/readings-sheet/columns/guess-columns.ts';
import { mayBeOf } from '../../../src/readings-sheet/columns/what-it-may-be.ts';
import type { NamedColumn } from '../../../src/readings-sheet/heads/name-columns.ts';
import { unitCalled } from '../../../src/units/names.ts';

const UNNAMED: NamedColumn = { quantity: null, unit: null, sureness: 0 };
const read = (texts: string) => texts.split(' ').map((text) => ({ text, value: Number(text), chance: 0.99 }));
const spelled = (texts: string) => texts.split(' ').map((text) => [{ text, logLikelihood: 0 }]);
const guessed = (columns: readonly NamedColumn[], ...texts: string[]) =>
  guessColumns(columns, texts.map(read)).map(({ quantity, unit }) => `${quantity} ${unit?.unit ?? '-'}`);

describe('columns that could not be named', () => {
  test('are what their readings look like', () => {
    expect(
      guessed(
        [UNNAMED, UNNAMED, UNNAMED, UNNAMED],
        '1739 1736 1730 1720 1709',
        '0 25 50 75 100',
        '3.81 4.32 4.95 5.60 6.71',
        '0 734 1578 2655 4109',
      ),
    ).toEqual(['speed_rpm rpm', 'opening_pct %', 'current_A A', 'flow_m3_s m³/h']);
  });

  test('are the number of the row where they count, for certain', () => {
    const [count, other] = guessColumns([UNNAMED, UNNAMED], ['1 2 3 4 5', '1 2 3 4 6'].map(read));
    expect(count).toMatchObject({ quantity: 'opening', unit: null });
    expect(count!.sureness).toBeGreaterThan(0.6);
    expect(other!.quantity).not.toBe('opening');
  });

  test('keep their name where only the unit is missing, are never sure, and take no quantity twice', () => {
    const pressure: NamedColumn = { quantity: 'staticPressure_Pa', unit: null, sureness: 0.6 };
    const speed: NamedColumn = { quantity: 'speed_rpm', unit: unitCalled('rpm'), sureness: 1 };
    const [first, second, third] = guessColumns(
      [pressure, speed, UNNAMED],
      ['2.298 2.105 1.655 0.505 0.023', '1440 1438 1436 1430 1425', '1440 1438 1436 1430 1425'].map(read),
    );
    expect(first).toMatchObject({ quantity: 'staticPressure_Pa', unit: { unit: 'kPa' }, sureness: 0.3 });
    expect(second).toBe(speed);
    expect(third!.quantity).not.toBe('speed_rpm');
  });
});

test('numbers that count the rows are no percentages, and others no count', () => {
  const count = mayBeOf(spelled('1 2 3 4 5 6'));
  const share = mayBeOf(spelled('0 20 40 60 80 100'));
  expect([count('opening'), count('opening_pct')]).toEqual([true, false]);
  expect([share('opening'), share('opening_pct')]).toEqual([false, true]);
  expect(mayBeOf(spelled('1 2'))('opening_pct')).toBe(true);
});

test('what hardly changes is no flow, what changes much no speed, and what counts nothing but a count', () => {
  const speed = mayBeOf(spelled('2885 2878 2875 2866 284 2857 2850'));
  expect([speed('speed_rpm'), speed('flow_m3_s'), speed('velocityPressure_Pa')]).toEqual([true, false, false]);
  const flow = mayBeOf(spelled('0 176 334 520 632 833 984'));
  expect([flow('speed_rpm'), flow('flow_m3_s'), flow('inputPower_W')]).toEqual([false, true, true]);
  expect(mayBeOf(spelled('1 2 3 4 5 6'))('orificeDiameter_m')).toBe(false);
});

test('what hardly changes is no flow, what changes much no speed, and what counts nothing but a count', () => {
  const speed = mayBeOf(spelled('2885 2878 2875 2866 284 2857 28'));
  expect([speed('speed_rpm'), speed('flow_m3_s'), speed('velocityPressure_Pa')]).toEqual([true, false, false]);
  const flow = mayBeOf(spelled('0 176 334 520 632 833 984'));
  expect([flow('speed_rpm'), flow('flow_m3_s'), flow('inputPower_W')]).toEqual([false, true, true]);
  expect(mayBeOf(spelled('1 2 3 4 5 6'))('orificeDiameter_m')).toBe(false);
});
