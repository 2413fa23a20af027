import { describe, expect, it } from 'vitest';
import { cropOf, turnOf } from '../../../../web/plate/crop-view.ts';
import { figureText } from '../../../../web/plate/figure-text.ts';

describe('a piece of the photo', () => {
  it('is turned by the lean of the plate', () => {
    expect(turnOf([])).toBe(0);
    expect(
      turnOf([
        [0, 0],
        [100, 0],
        [100, 50],
        [0, 50],
      ]),
    ).toBeCloseTo(0);
    // read from the bottom up: its top left corner lies bottom left in the photo
    expect(
      turnOf([
        [0, 100],
        [0, 0],
        [50, 0],
        [50, 100],
      ]),
    ).toBeCloseTo(90);
  });

  it('has room round the box, and long and short side change places on its side', () => {
    expect(cropOf([10, 20, 100, 40], 0)).toEqual({ middle: [60, 40], width: 128, height: 68, turn_deg: 0 });
    expect(cropOf([10, 20, 40, 100], 90)).toMatchObject({ middle: [30, 70], width: 128, height: 68 });
  });
});

describe('the text of a figure', () => {
  it.each([
    [2200, '2,2 kW', 'power', 'kW', '2,2 kW'],
    [2237.1, '3 HP', 'power', 'kW', '3 HP'],
    [1420, '1420 min⁻¹', 'speed', 'rpm', '1420 min⁻¹'],
    [1440, '1440', 'speed', 'rpm', '1440 rpm'],
    [0.84, '0,84', 'fraction', '1', '0,84'],
    [0.895, '89.5 %', 'fraction', '%', '89.5 %'],
    // the print alone would mean another value: the unit stood elsewhere on the plate
    [2200, '2200', 'power', 'kW', '2.2 kW'],
    [4.94, '', 'current', 'A', '4.94 A'],
  ] as const)('%d printed “%s” is written “%s”', (value, printed, quantity, unit, text) => {
    expect(figureText(value, printed, quantity, unit)).toBe(text);
  });
});
