import { describe, expect, it } from 'vitest';
import { all, create } from 'mathjs';
import {
  fromBase,
  QUANTITIES,
  toBase,
  unitByName,
  unitCalled,
  UNITS,
  unitsOf,
  type Quantity,
} from '../../../src/units/index.ts';

const QUANTITY_NAMES = Object.keys(QUANTITIES) as Quantity[];

describe('the unit table', () => {
  it('has the base unit of every quantity, at factor 1', () => {
    for (const quantity of QUANTITY_NAMES) {
      const base = unitByName(QUANTITIES[quantity].base, quantity);
      expect(base, quantity).not.toBeNull();
      expect([base!.factor, base!.offset], quantity).toEqual([1, 0]);
    }
  });

  it('names each unit once, and each twin is another unit of the same quantity', () => {
    expect(new Set(UNITS.map((u) => u.unit)).size).toBe(UNITS.length);
    for (const unit of UNITS) {
      if (unit.twin === null) continue;
      expect(unitCalled(unit.twin).quantity, unit.unit).toBe(unit.quantity);
      expect(unit.twin).not.toBe(unit.unit);
    }
  });

  it('has no spelling that names two units of one quantity', () => {
    for (const quantity of QUANTITY_NAMES) {
      const owner = new Map<string, string>();
      for (const unit of unitsOf(quantity)) {
        for (const name of [unit.unit, ...unit.aliases, ...unit.spoken]) {
          expect(unitByName(name, quantity)?.unit, `${quantity}: ${name}`).toBe(unit.unit);
          expect(owner.get(name) ?? unit.unit, name).toBe(unit.unit);
          owner.set(name, unit.unit);
        }
      }
    }
  });

  it.each([
    ['m³/s', 'm³/s'],
    ['m3/s', 'm³/s'],
    ['m³/min', 'm³/min'],
    ['m³/h', 'm³/h'],
    ['L/s', 'L/s'],
    ['CFM', 'CFM'],
    ['ft³/min', 'CFM'],
    ['ft3/min', 'CFM'],
    ['Pa', 'Pa'],
    ['daPa', 'daPa'],
    ['hPa', 'hPa'],
    ['kPa', 'kPa'],
    ['mbar', 'mbar'],
    ['mm WG', 'mm water'],
    ['mmH2O', 'mm water'],
    ['mm WS', 'mm water'],
    ['mm w.g.', 'mm water'],
    ['in. WG', 'in water'],
    ['inH2O', 'in water'],
    ['in w.c.', 'in water'],
    ['in. Hg', 'in Hg'],
    ['W', 'W'],
    ['kW', 'kW'],
    ['HP', 'HP'],
    ['BHP', 'HP'],
    ['PS', 'PS'],
    ['%', '%'],
    ['rpm', 'rpm'],
    ['min⁻¹', 'rpm'],
    ['1/min', 'rpm'],
    ['U/min', 'rpm'],
    ['r/min', 'rpm'],
  ])('knows %s without being told the quantity', (name, unit) => {
    expect(unitByName(name)?.unit).toBe(unit);
  });

  it('takes a spoken "mm" for water only where a pressure is wanted', () => {
    expect(unitByName('mm', 'pressure')?.unit).toBe('mm water');
    expect(unitByName('mm')?.unit).toBe('mm');
    expect(unitByName('mm', 'power')).toBeNull();
    expect(unitByName('furlong')).toBeNull();
    expect(() => unitCalled('furlong')).toThrow(
      'unitCalled: expected the name of a unit in the table, received "furlong"',
    );
  });
});

describe('second opinion', () => {
  const math = create({ ...all });
  /** Our name → the name mathjs has for the same unit. */
  const SAME: Record<string, string> = {
    mm: 'mm',
    cm: 'cm',
    km: 'km',
    in: 'inch',
    ft: 'foot',
    µm: 'micrometer',
    thou: 'mil',
    'm²': 'm2',
    'cm²': 'cm2',
    'mm²': 'mm2',
    'in²': 'sqin',
    'ft²': 'sqft',
    'm³': 'm3',
    L: 'liter',
    mL: 'ml',
    'ft³': 'cuft',
    'US gal': 'gallon',
    'm³/s': 'm^3/s',
    'm³/min': 'm^3/minute',
    'm³/h': 'm^3/hour',
    'L/s': 'l/s',
    CFM: 'ft^3/minute',
    Pa: 'Pa',
    hPa: 'hPa',
    kPa: 'kPa',
    MPa: 'MPa',
    mbar: 'mbar',
    bar: 'bar',
    'mm water': 'mmH2O',
    'cm water': 'cmH2O',
    'mm Hg': 'mmHg',
    psi: 'psi',
    atm: 'atm',
    W: 'W',
    kW: 'kW',
    HP: 'hp',
    'm/s': 'm/s',
    'ft/min': 'ft/minute',
    'ft/s': 'ft/s',
    'km/h': 'km/h',
    mph: 'mi/h',
    K: 'K',
    '°C': 'degC',
    '°F': 'degF',
    V: 'V',
    kV: 'kV',
    mV: 'mV',
    A: 'A',
    mA: 'mA',
    Hz: 'Hz',
    kHz: 'kHz',
    'kg/m³': 'kg/m^3',
    'g/cm³': 'g/cm^3',
    'lb/ft³': 'lbm/ft^3',
    s: 's',
    ms: 'ms',
    min: 'minute',
    h: 'hour',
    day: 'day',
    kg: 'kg',
    g: 'g',
    lb: 'lbm',
    oz: 'oz',
    t: 'tonne',
    'kg/h': 'kg/hour',
    'kg/s': 'kg/s',
    'kg/min': 'kg/minute',
    'g/s': 'g/s',
    'lb/h': 'lbm/hour',
    'kg/day': 'kg/day',
    '°': 'deg',
    rad: 'rad',
    µF: 'uF',
    nF: 'nF',
  };
  /** Base unit of ours in mathjs; it has no rpm and no share. */
  const BASE: Partial<Record<Quantity, string>> = {
    length: 'm',
    area: 'm2',
    volume: 'm3',
    flow: 'm^3/s',
    pressure: 'Pa',
    power: 'W',
    velocity: 'm/s',
    temperature: 'degC',
    voltage: 'V',
    current: 'A',
    frequency: 'Hz',
    density: 'kg/m^3',
    time: 's',
    mass: 'kg',
    'mass-flow': 'kg/hour',
    angle: 'deg',
    capacity: 'uF',
  };
  /** mathjs carries these rounded: the mmHg of NIST SP 811 as 133.322, horsepower and psi to ten figures. */
  const COARSE: Record<string, number> = { HP: 1e-9, psi: 1e-9, 'mm Hg': 4e-6 };

  it.each(UNITS.filter((u) => SAME[u.unit] && BASE[u.quantity]).map((u) => [u.unit, u] as const))(
    'mathjs agrees on %s',
    (name, unit) => {
      const theirs = math.unit(37, SAME[name]!).toNumber(BASE[unit.quantity]!);
      expect(Math.abs(toBase(37, unit) / theirs - 1)).toBeLessThan(COARSE[name] ?? 1e-12);
      expect(fromBase(toBase(37, unit), unit)).toBeCloseTo(37, 10);
    },
  );
});
