import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatQuantity,
  fromBase,
  parseQuantity,
  QUANTITIES,
  toBase,
  UNITS,
  type Quantity,
} from '../../src/units/index.ts';

const anyUnit = fc.constantFrom(...UNITS);
const anyNumber = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const anyQuantity = fc.constantFrom(...(Object.keys(QUANTITIES) as Quantity[]));

describe('units there and back', () => {
  it('a number comes back from the base unit as it went', () => {
    fc.assert(
      fc.property(anyUnit, anyNumber, (unit, value) => {
        expect(Math.abs(fromBase(toBase(value, unit), unit) - value)).toBeLessThanOrEqual(
          1e-9 * (Math.abs(value) + 1000),
        );
      }),
    );
  });

  it('a number typed with its unit is read as exactly that number', () => {
    fc.assert(
      fc.property(anyUnit, fc.double({ min: 0.001, max: 1e6, noNaN: true }), (unit, value) => {
        const read = parseQuantity(`${value} ${unit.unit}`, unit.quantity, QUANTITIES[unit.quantity].base);
        expect(read.ok).toBe(true);
        if (!read.ok) return;
        const wanted = toBase(value, unit);
        // Where a point can set off thousands, a reading a thousand times larger must be announced.
        if (read.warnings.length === 0)
          expect(read.value.si).toBeCloseTo(wanted, 8 - Math.ceil(Math.log10(Math.abs(wanted) + 1)));
        expect(read.value.unit).toBe(unit.unit);
      }),
    );
  });

  it('what the program writes it can read, to the figures written', () => {
    fc.assert(
      fc.property(anyUnit, fc.double({ min: 1e-3, max: 9e5, noNaN: true }), (unit, value) => {
        const base = toBase(value, unit);
        const read = parseQuantity(formatQuantity(base, unit), unit.quantity, QUANTITIES[unit.quantity].base);
        expect(read.ok).toBe(true);
        if (!read.ok || read.warnings.length > 0) return;
        const shown = fromBase(read.value.si, unit);
        expect(Math.abs(shown - value)).toBeLessThanOrEqual(
          Math.max(0.5 * 10 ** -unit.decimals, 0.051 * Math.abs(value)) * 1.000001,
        );
      }),
    );
  });

  it('any text at all gets an answer or a sentence, never a throw and never NaN', () => {
    const pieces = fc.constantFrom(
      '1',
      '2',
      '0',
      ',',
      '.',
      ' ',
      "'",
      '/',
      '*',
      '(',
      ')',
      '-',
      'e',
      'mm',
      'in',
      '"',
      'kW',
      '½',
      '٢',
      '٫',
      'x',
      'Ø',
      '%',
      '°',
      'to',
    );
    const text = fc.oneof(
      fc.string({ maxLength: 30 }),
      fc.array(pieces, { maxLength: 14 }).map((p) => p.join('')),
    );
    fc.assert(
      fc.property(text, anyQuantity, (typed, quantity) => {
        const read = parseQuantity(typed, quantity, QUANTITIES[quantity].base);
        if (read.ok) expect(Number.isFinite(read.value.si)).toBe(true);
        else expect(read.issues.every((i) => i.message.length > 0)).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });
});
