import { describe, expect, test } from 'vitest';
import { meaningOfWord } from '../../../../src/chart/lines/word-meanings.ts';

describe('a speed', () => {
  test.each([
    ['2900 rpm', 2900],
    ['n=2900', 2900],
    ['n 1900', 1900],
    ['2900 min-1', 2900],
    ['2900 1/min', 2900],
    ['2900 об/мин', 2900],
    ['2.900 U/min', 2900],
    ["2'900 Upm", 2900],
    ['n1 = 900', 900],
    ['rpm 2900', 2900],
    ['ps 2900 t/min', 2900],
    ['1440 dev/dak', 1440],
    ['1440 omw/min', 1440],
  ])('may be written %s', (text, speed_rpm) => {
    expect(meaningOfWord(text)).toMatchObject({ speed_rpm, isSurelySpeed: true });
  });

  test.each([
    ['2950 p.m.', 2950],
    ['3200 rip.', 3200],
    ['1750 06/MuH', 1750],
    ['1170 Umin', 1170],
    ['850 1/pin', 850],
    ['2970 min 1!', 2970],
  ])('is known in a misread unit: %s', (text, speed_rpm) => {
    expect(meaningOfWord(text)).toMatchObject({ speed_rpm, isSurelySpeed: true });
  });

  test('said as N = names no power', () => {
    expect(meaningOfWord('N = 1970 RPM')).toMatchObject({ speed_rpm: 1970, isSurelySpeed: true, quantity: null });
    expect(meaningOfWord('N 970 RPM').quantity).toBeNull();
    expect(meaningOfWord('N 970 min⁻¹').quantity).toBe('shaft_power');
    expect(meaningOfWord('N (kW)').quantity).toBe('shaft_power');
  });

  test('with a figure lost says no speed, and which figures are left', () => {
    expect(meaningOfWord('3 00 RPM')).toMatchObject({ speed_rpm: null, isSurelySpeed: true, figures: '300' });
  });

  test('without unit is none for sure', () => {
    expect(meaningOfWord('2210')).toMatchObject({ speed_rpm: 2210, isSurelySpeed: false });
  });

  test.each(['N-455', 'RB-315', '1500 m3/min', '2500 CFM', 'Air 1.2 kg/m', '35°', '60%', 'nozzle 150 mm'])(
    'is not said by %s',
    (text) => {
      expect(meaningOfWord(text)).toMatchObject({ speed_rpm: null, isSurelySpeed: false });
    },
  );
});
