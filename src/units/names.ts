import type { Quantity } from './quantities.ts';
import { UNITS, type Unit } from './units.ts';

/** A unit found by its name; `assumed` is true where the word could also mean something else ("mm" for a pressure). */
export type NamedUnit = { unit: Unit; assumed: boolean };

const LOOKALIKES: readonly [RegExp, string][] = [
  [/º/g, '°'],
  [/[”“″‶]|''|’’|′′/g, '"'],
  [/[’‘′‵`]/g, "'"],
  [/[\u2010-\u2015\u2212]/g, '-'],
  [/[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g, ''],
  [/ي/g, 'ی'],
  [/ك/g, 'ک'],
];

/** One look for every way of typing the same thing: quotes, dashes, superscripts, Arabic letters. Source: Unicode NFKC. */
export function plainSpelling(text: string): string {
  let plain = text;
  for (const [from, to] of LOOKALIKES) plain = plain.replace(from, to);
  return plain
    .normalize('NFKC')
    .replace(/[\u2212]/g, '-')
    .replace(/[\u00b5\u03bc]/g, 'u');
}

/** Spaces, dots, raised dots, carets and one pair of brackets around the whole say nothing about a unit. */
const exactKey = (text: string): string =>
  plainSpelling(text)
    .trim()
    .replace(/^[([](.+)[)\]]$/, '$1')
    .replace(/[\s.·⋅^_]/g, '');

const looseKey = (text: string): string => exactKey(text).toLowerCase();

type Entry = { unit: Unit; assumed: boolean };

const BY_EXACT = new Map<string, Entry[]>();
const BY_LOOSE = new Map<string, Entry[]>();

const enter = (map: Map<string, Entry[]>, key: string, entry: Entry): void => {
  const list = map.get(key) ?? [];
  if (!list.some((e) => e.unit === entry.unit)) map.set(key, [...list, entry]);
};

for (const unit of UNITS) {
  for (const name of [unit.unit, ...unit.aliases]) {
    enter(BY_EXACT, exactKey(name), { unit, assumed: false });
    if (!unit.exactCase) enter(BY_LOOSE, looseKey(name), { unit, assumed: false });
  }
  for (const name of unit.spoken) enter(BY_LOOSE, looseKey(name), { unit, assumed: true });
}

/** Every unit a spelling can mean, the surest first: exact capitals before loose ones, proper names before spoken ones. */
export function unitsNamed(text: string): NamedUnit[] {
  const entries = [...(BY_EXACT.get(exactKey(text)) ?? []), ...(BY_LOOSE.get(looseKey(text)) ?? [])];
  const sure = entries.filter((e) => !e.assumed);
  return [...sure, ...entries.filter((e) => e.assumed)];
}

/**
 * The unit of any spelling in the table ("m3/h", "ft³/min", "mm WG", "inH2O", "min⁻¹").
 * With a quantity only its units are looked at, and words people use for it ("mm" for a pressure) count too;
 * without one the first proper name wins. null where no unit has that name.
 */
export function unitByName(text: string, quantity?: Quantity): Unit | null {
  const named = unitsNamed(text);
  if (quantity !== undefined) return named.find((n) => n.unit.quantity === quantity)?.unit ?? null;
  return named.find((n) => !n.assumed)?.unit ?? null;
}

/** The unit with exactly this name in the table; a programmer's mistake where there is none. */
export function unitCalled(name: string): Unit {
  const unit = UNITS.find((u) => u.unit === name);
  if (!unit) throw new RangeError(`unitCalled: expected the name of a unit in the table, received "${name}"`);
  return unit;
}

/** The units of one quantity, in the table's order (the commonest first). */
export const unitsOf = (quantity: Quantity): Unit[] => UNITS.filter((u) => u.quantity === quantity);

/** Value in the quantity's base unit (SI, with the program's own habits: rpm, °C, °, kg/h, µF) of a number in a unit. */
export const toBase = (value: number, unit: Unit): number => (value + unit.offset) * unit.factor;

/** Number in a unit of a value in the quantity's base unit; undoes `toBase`. */
export const fromBase = (base: number, unit: Unit): number => base / unit.factor - unit.offset;
