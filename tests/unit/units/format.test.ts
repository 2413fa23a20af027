import { describe, expect, it } from 'vitest';
import { formatIn, formatNumber, formatQuantity, formatRange, formatTwin, twinOf } from '../../../src/units/index.ts';

const NBSP = '\u00a0';

describe('numbers as people read them', () => {
  it.each([
    [1 / 3, 'm³/h', `1,200${NBSP}m³/h`],
    [1 / 3, 'CFM', `706${NBSP}CFM`],
    [1470, 'Pa', `1,470${NBSP}Pa`],
    [1470, 'mm water', `150${NBSP}mm water`],
    [-0.4, 'Pa', `−0.40${NBSP}Pa`],
    [0, 'Pa', `0${NBSP}Pa`],
    [2200, 'kW', `2.20${NBSP}kW`],
    [4, 'kW', `0.0040${NBSP}kW`],
    [0.15, 'in', `5.91${NBSP}in`],
    [25, '°F', `77${NBSP}°F`],
    [45, '°', '45°'],
    [0.97, '%', `97${NBSP}%`],
    [0.976, '1', '0.98'],
    [1234567, 'W', `1,234,567${NBSP}W`],
    [-0.0000000000001, 'Pa', `0${NBSP}Pa`],
  ])('%d as %s', (base, unit, text) => {
    expect(formatQuantity(base, unit)).toBe(text);
  });

  it('keeps the decimals it is told, for columns', () => {
    expect(formatIn(0.004, 'm³/s', 2)).toBe('0.00');
    expect(formatQuantity(1470.4, 'Pa', 1)).toBe(`1,470.4${NBSP}Pa`);
  });

  it('writes a range once with its unit', () => {
    expect(formatRange(280 / 3600, 340 / 3600, 'm³/h')).toBe(`280–340${NBSP}m³/h`);
    expect(formatRange(0, 0.004, 'm³/s')).toBe(`0.0000–0.0040${NBSP}m³/s`);
  });

  it('echoes the twin unit', () => {
    expect(formatTwin(1 / 3, 'm³/h')).toBe(`706${NBSP}CFM`);
    expect(formatTwin((700 * 0.3048 ** 3) / 60, 'CFM')).toBe(`1,189${NBSP}m³/h`);
    expect(formatTwin(1470, 'Pa')).toBe(`150${NBSP}mm water`);
    expect(formatTwin(2200, 'kW')).toBe(`2.95${NBSP}HP`);
    expect(formatTwin(0.1016, 'in')).toBe(`102${NBSP}mm`);
    expect(formatTwin(50, 'Hz')).toBeNull();
    expect(twinOf('°C')?.unit).toBe('°F');
  });

  it('has nothing to show for a number that is none', () => {
    expect(() => formatNumber(Number.NaN, 1)).toThrow('formatNumber: expected a finite number, received NaN');
  });
});
