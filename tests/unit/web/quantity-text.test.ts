import { describe, expect, it } from 'vitest';
import {
  bareText,
  echoOf,
  numberIn,
  readQuantity,
  shownText,
  withUnitNamed,
} from '../../../web/forms/quantity-text.ts';

describe('a quantity field', () => {
  it.each([
    ['4 in', 'length', 'mm', 0.1016],
    ['0,75 kW', 'power', 'kW', 750],
    ['1/2 HP', 'power', 'kW', 372.85],
    ['150 mm WG', 'pressure', 'Pa', 1471],
    ['٢٠٠', 'length', 'mm', 0.2],
    ['1850', 'length', 'm', 1850],
  ] as const)('understands %s', (text, quantity, unit, si) => {
    const read = readQuantity(text, quantity, unit);
    expect(read.ok && read.si).toBeCloseTo(si, si < 1 ? 6 : 0);
  });

  it('says how to mend what it cannot read', () => {
    const read = readQuantity('12 bananas', 'length', 'mm');
    expect(read).toEqual({ ok: false, message: '“bananas” is no unit known here. Try mm, cm, m, in, ft.' });
  });

  it('keeps what was typed as long as it means the value, and shows the value when a fix changed it', () => {
    expect(shownText(0.1016, '4 in', 'length', 'mm')).toBe('4 in');
    expect(shownText(0.125, '4 in', 'length', 'mm')).toBe('125\u00a0mm');
    expect(shownText(0.125, undefined, 'length', 'mm')).toBe('125\u00a0mm');
    expect(shownText(null, '4 in', 'length', 'mm')).toBe('');
  });

  it('names the unit of a bare number when the field is left, so that another unit chosen later changes nothing', () => {
    expect(withUnitNamed('150', 'length', 'mm')).toBe('150 mm');
    expect(withUnitNamed(' 4 in ', 'length', 'mm')).toBe('4 in');
    expect(withUnitNamed('0.86', 'fraction', '1')).toBe('0.86');
    expect(withUnitNamed('twelve', 'length', 'mm')).toBe('twelve');
    expect(shownText(0.15, withUnitNamed('150', 'length', 'mm'), 'length', 'in')).toBe('150 mm');
  });

  it('shows the number alone in a column whose head names the unit', () => {
    expect(bareText(0.075, '75 mm', 'length', 'mm')).toBe('75');
    expect(bareText(0.075, undefined, 'length', 'mm')).toBe('75');
    expect(bareText(0.0762, '3 in', 'length', 'mm')).toBe('3 in');
    expect(bareText(undefined, undefined, 'length', 'mm')).toBe('');
  });

  it('echoes the twin, or the own unit where another was typed', () => {
    expect(echoOf(0.1016, 'in', 'length', 'mm')).toBe('102\u00a0mm');
    expect(echoOf(0.1, 'mm', 'length', 'mm')).toBe('3.94\u00a0in');
    expect(echoOf(400, 'V', 'voltage', 'V')).toBe('');
  });

  it('gives an axis end as a plain number in the unit of the axis, whatever it was typed in', () => {
    expect(numberIn('3000', 'flow', 'm³/h')).toBeCloseTo(3000, 6);
    expect(numberIn('1 m3/s', 'flow', 'm³/h')).toBeCloseTo(3600, 6);
    expect(numberIn('', 'flow', 'm³/h')).toBeNull();
  });
});
