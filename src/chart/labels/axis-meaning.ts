import { UNITS, type Unit } from '../../units/units.ts';
import type { AxisQuantity } from '../hints.ts';
import { pressureLike, type Title } from './title.ts';
import type { TitleQuantity } from './title-words.ts';

/** What the titles of one scale mean together. */
export type Meaning = {
  readonly quantity: TitleQuantity | null;
  readonly sureness: number;
  readonly unit: Unit | null;
  readonly isUnitSure: boolean;
  readonly multiplier: number;
  readonly text: string;
};

/** The surest quantity, the first unit that goes with it; a quantity without words is told by its unit. */
export function meaningOf(titles: readonly Title[]): Meaning {
  // the nearest words mean the scale, those further off may be of the page
  const worth = (t: Title) => t.sureness + (t.unit ? 0.15 : 0) - 0.07 * t.rank;
  const named = titles.filter((t) => t.quantity).sort((a, b) => worth(b) - worth(a))[0];
  let quantity = named && named.sureness >= 0.45 ? named.quantity : null;
  let sureness = quantity ? named!.sureness : 0;
  const wanted = pressureLike(quantity);
  const goes = (t: Title) => t.unit && (!wanted || t.unit.unit.quantity === wanted);
  const withUnit = [named, ...titles].find((t) => t && goes(t));
  const unit = withUnit?.unit ?? null;
  if (!quantity && unit) {
    quantity = OF_UNIT[unit.unit.quantity] ?? null;
    sureness = quantity === 'pressure' ? 0.6 : 0.8;
  } else if (quantity && wanted && unit?.isSure) sureness = Math.max(sureness, WITH_UNIT);
  return {
    quantity,
    sureness,
    unit: unit?.unit ?? null,
    isUnitSure: unit?.isSure ?? false,
    multiplier: Math.max(1, ...titles.filter((t) => t === withUnit || t === named).map((t) => t.multiplier)),
    text: titles.map((t) => t.text).join(' · '),
  };
}

/** A sign or a faint word beside a unit that goes with it. */
const WITH_UNIT = 0.75;

const OF_UNIT: Partial<Record<Unit['quantity'], TitleQuantity>> = {
  flow: 'flow',
  pressure: 'pressure',
  power: 'shaft_power',
  fraction: 'efficiency',
};

/** Largest values, in base units, that scales of fan charts end at. Source: the smallest vacuum motors to mine fans. */
const ENDS_AT: Record<AxisQuantity, readonly [number, number]> = {
  flow: [0.012, 400],
  static_pressure: [15, 120_000],
  total_pressure: [15, 120_000],
  shaft_power: [4, 3e6],
  efficiency: [0.15, 1.3],
};

/** True where a scale of this quantity could end at this value [m³/s, Pa, W, share]. */
export function isPlausibleEnd(quantity: AxisQuantity, base: number): boolean {
  const [least, most] = ENDS_AT[quantity];
  return base >= least && base <= most;
}

const GUESSES: Record<AxisQuantity, readonly string[]> = {
  flow: ['m³/h', 'm³/s', 'm³/min', 'L/s', 'CFM'],
  static_pressure: ['Pa', 'mm water', 'kPa', 'in water'],
  total_pressure: ['Pa', 'mm water', 'kPa', 'in water'],
  shaft_power: ['kW', 'W', 'HP'],
  efficiency: ['%', '1'],
};

/** The commonest unit in which a scale could end there: a guess, to be asked about. */
export function guessUnit(quantity: AxisQuantity, end: number): Unit {
  const units = GUESSES[quantity].map((name) => UNITS.find((u) => u.unit === name)!);
  const usual = (u: Unit) => isPlausibleEnd(quantity, end * u.factor) && end >= 1 && end <= 100_000;
  return units.find(usual) ?? units.find((u) => isPlausibleEnd(quantity, end * u.factor)) ?? units[0]!;
}
