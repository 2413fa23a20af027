import { describe, expect, it } from 'vitest';
import { parseQuantity, type Quantity } from '../../../src/units/index.ts';
import { TYPED_AIR } from './typed-air.ts';
import { TYPED_SIZES } from './typed-sizes.ts';

const CLEAR = [...TYPED_SIZES, ...TYPED_AIR];
const WATER = 9.80665;

describe('what people type is read, without a doubt where there is none', () => {
  for (const { quantity, bare, typed } of CLEAR) {
    it.each(typed)(`${quantity}: %s`, (text, base) => {
      const read = parseQuantity(text, quantity, bare);
      expect(read).toMatchObject({ ok: true, warnings: [] });
      if (!read.ok) return;
      expect(read.value.si).toBeCloseTo(base, 12 - Math.max(0, Math.ceil(Math.log10(Math.abs(base) + 1e-12))));
      expect(read.value.asTyped).toBe(text.trim());
    });
  }

  it('covers at least 200 ways of typing', () => {
    expect(CLEAR.reduce((n, group) => n + group.typed.length, 0)).toBeGreaterThanOrEqual(200);
  });
});

describe('what can be read in two ways says so and names both', () => {
  const DOUBTFUL: readonly (readonly [string, Quantity, string, number, string, string])[] = [
    ['1,200 m', 'length', 'mm', 1200, 'two-readings', '“1,200 m” is read as 1200 m. Type 1.2 m if that is meant.'],
    ['1.200 m', 'length', 'mm', 1.2, 'two-readings', '“1.200 m” is read as 1.2 m. Type 1200 m if that is meant.'],
    ['1,500', 'power', 'kW', 1500, 'two-readings', '“1,500” is read as 1.5 kW. Type 1500 kW if that is meant.'],
    [
      '1,225',
      'density',
      'kg/m³',
      1.225,
      'two-readings',
      '“1,225” is read as 1.225 kg/m³. Type 1225 kg/m³ if that is meant.',
    ],
    ['2.850', 'speed', 'rpm', 2850, 'two-readings', '“2.850” is read as 2850 rpm. Type 2.85 rpm if that is meant.'],
    ['1-1/2 in', 'length', 'mm', 0.0381, 'two-readings', '“1-1/2 in” is read as 1.5 in, not as a subtraction.'],
    ['0.5', 'fraction', '%', 0.005, 'two-readings', '“0.5” is read as 0.5 %. Type 50 if that share is meant.'],
    ['150 mm', 'pressure', 'Pa', 150 * WATER, 'unit-assumed', '“150 mm” is taken as mm water.'],
    ['6 in', 'pressure', 'Pa', 6 * 249.08891, 'unit-assumed', '“6 in” is taken as in water.'],
    ['24 degrees', 'temperature', '°F', 24, 'unit-assumed', '“24 degrees” is taken as °C.'],
    ['55 gallons', 'volume', 'L', 55 * 3.785411784e-3, 'unit-assumed', '“55 gallons” is taken as US gal.'],
  ];
  it.each(DOUBTFUL)('%s as %s', (text, quantity, bare, base, code, sentence) => {
    const read = parseQuantity(text, quantity, bare, '/here');
    expect(read.ok && read.warnings).toEqual([{ code, text: sentence, path: '/here' }]);
    expect(read.ok && read.value.si).toBeCloseTo(base, 9);
  });
});

describe('what is no quantity is refused with a sentence', () => {
  const REFUSED: readonly (readonly [string, Quantity, string])[] = [
    ['', 'length', 'Nothing is typed here yet.'],
    ['   ', 'length', 'Nothing is typed here yet.'],
    ['abc', 'length', '“abc” has no number in it.'],
    ['mm', 'length', '“mm” has no number in it.'],
    ['2 kW', 'length', '“2 kW” is a power. Here a length is wanted: mm, cm, m, in, ft.'],
    ['4 in', 'flow', '“4 in” is a length. Here a flow of air is wanted: m³/h, CFM, m³/min, L/s, m³/s.'],
    ['15 m/s', 'flow', '“15 m/s” is a speed of air. Here a flow of air is wanted: m³/h, CFM, m³/min, L/s, m³/s.'],
    ['50 Hz', 'speed', '“50 Hz” is a frequency. Here a speed of turning is wanted: rpm, rps, rad/s.'],
    ['700 scfm', 'flow', '“scfm” is no unit known here. Try m³/h, CFM, m³/min, L/s, m³/s.'],
    ['6 furlongs', 'length', '“furlongs” is no unit known here. Try mm, cm, m, in, ft.'],
    ['10-12 mm', 'length', '“10-12” looks like a range. One value, please.'],
    ['10–12 mm', 'length', '“10–12 mm” looks like a range. One value, please.'],
    ['10 to 12 mm', 'length', '“10 to 12 mm” looks like a range. One value, please.'],
    ['10...12', 'length', '“10...12” looks like a range. One value, please.'],
    ['1,23,4', 'length', "“1,23,4” can't be read as one number."],
    ['1.2.3', 'length', "“1.2.3” can't be read as one number."],
    ['1 20', 'length', '“1 20” has two numbers side by side.'],
    ['2(3)', 'length', '“2(3)” needs a sign before the bracket.'],
    ['(2+3', 'length', "“(2+3” can't be worked out as a sum."],
    ['1/0', 'length', "“1/0” can't be worked out as a sum."],
    ['1e999', 'length', "“1e999” can't be read as one number."],
    ['1'.repeat(121), 'length', 'That is too long for one number.'],
    ['sqrt(4)', 'length', '“sqrt(4)” is no unit known here. Try mm, cm, m, in, ft.'],
    ['a=3', 'length', '“a=3” is no unit known here. Try mm, cm, m, in, ft.'],
    ['3;4', 'length', '“;4” is no unit known here. Try mm, cm, m, in, ft.'],
    ['5 mm 3 kW', 'length', '“mm 3 kW” is no unit known here. Try mm, cm, m, in, ft.'],
    ['5 in 6 ft', 'length', '“in 6 ft” is no unit known here. Try mm, cm, m, in, ft.'],
  ];
  it.each(REFUSED)('%s as %s', (text, quantity, sentence) => {
    const read = parseQuantity(
      text,
      quantity,
      quantity === 'length' ? 'mm' : quantity === 'flow' ? 'm³/h' : 'rpm',
      '/x',
    );
    expect(read).toEqual({ ok: false, issues: [{ code: 'not-understood', path: '/x', message: sentence }] });
  });

  it('a default unit of another quantity is a mistake in the program', () => {
    expect(() => parseQuantity('4', 'length', 'kW')).toThrow('parseQuantity: expected a unit of length, received "kW"');
  });
});
