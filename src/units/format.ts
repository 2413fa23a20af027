import { fromBase, unitCalled } from './names.ts';
import type { Unit } from './units.ts';

/** The only code that rounds numbers for people. Minus is a true minus sign, thousands have a comma, figures are tabular. */

const FEWEST_FIGURES = 2;
const MOST_DECIMALS = 9;

/** Decimals to show: the unit's own, or more where the value would otherwise lose its first two figures; next to nothing is 0. */
function decimalsFor(value: number, unit: Unit): number {
  if (value === 0) return unit.decimals;
  const needed = FEWEST_FIGURES - 1 - Math.floor(Math.log10(Math.abs(value)));
  return needed > MOST_DECIMALS ? unit.decimals : Math.max(unit.decimals, needed);
}

/**
 * A number alone, rounded for reading: 1234.5 with 1 decimal → "1,234.5". Unit: none. Source: definition.
 * Throws RangeError for NaN or infinity: whoever calls has no number to show.
 */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`formatNumber: expected a finite number, received ${value}`);
  const [whole = '', fraction] = Math.abs(value).toFixed(decimals).split('.');
  const digits = whole.replace(/\B(?=(\d{3})+(?!\d))/g, ',') + (fraction === undefined ? '' : `.${fraction}`);
  return value < 0 && /[1-9]/.test(digits) ? `−${digits}` : digits;
}

const asUnit = (unit: Unit | string): Unit => (typeof unit === 'string' ? unitCalled(unit) : unit);

/** "°" stands at its number, everything else a no-break space away; a bare share has no unit. */
const withUnit = (digits: string, unit: Unit): string =>
  unit.unit === '1' ? digits : unit.unit === '°' ? `${digits}°` : `${digits}\u00a0${unit.unit}`;

/** Value in base units → the number in a unit, without the unit: for columns and axes. Rounded as `formatQuantity` does. */
export function formatIn(base: number, unit: Unit | string, decimals?: number): string {
  const u = asUnit(unit);
  const value = fromBase(base, u);
  return formatNumber(value, decimals ?? decimalsFor(value, u));
}

/**
 * Value in base units (SI; rpm, °C, °, kg/h, µF) → text in a unit, "1,200 m³/h".
 * @param decimals  fixes the decimals, for columns that must line up; left out, the unit's own, never fewer than two figures
 */
export const formatQuantity = (base: number, unit: Unit | string, decimals?: number): string =>
  withUnit(formatIn(base, unit, decimals), asUnit(unit));

/** Two values in base units → "280–340 m³/h", both with the same decimals. */
export function formatRange(low: number, high: number, unit: Unit | string): string {
  const u = asUnit(unit);
  const decimals = Math.max(
    u.decimals,
    decimalsFor(Math.max(Math.abs(fromBase(low, u)), Math.abs(fromBase(high, u))), u),
  );
  return withUnit(`${formatIn(low, u, decimals)}–${formatIn(high, u, decimals)}`, u);
}

/** The unit shown small beside another one (m³/h ↔ CFM, Pa ↔ mm water, kW ↔ HP, mm ↔ in), or null. */
export const twinOf = (unit: Unit | string): Unit | null => {
  const twin = asUnit(unit).twin;
  return twin === null ? null : unitCalled(twin);
};

/** The echo of a value in its unit's twin, "706 CFM", or null where the unit has none. */
export function formatTwin(base: number, unit: Unit | string): string | null {
  const twin = twinOf(unit);
  return twin === null ? null : formatQuantity(base, twin);
}
