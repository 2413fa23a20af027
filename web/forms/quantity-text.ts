import { fromBase, parseQuantity, unitByName, unitsOf, type Quantity } from '../../src/units/index.ts';
import { say, sayIn, sayTwin } from '../words/say.ts';

/** What a quantity field shows and understands: pure, so that every way of typing can be tried without a page. */

export type Reading = { ok: true; si: number; unit: string; remarks: string[] } | { ok: false; message: string };

/** Reads what stands in the field; a bare number is in the unit the field shows. */
export function readQuantity(text: string, quantity: Quantity, unit: string): Reading {
  const parsed = parseQuantity(text, quantity, unit);
  if (!parsed.ok) return { ok: false, message: parsed.issues[0]?.message ?? '' };
  return { ok: true, si: parsed.value.si, unit: parsed.value.unit, remarks: parsed.warnings.map((w) => w.text) };
}

const same = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1e-9, Math.abs(a), Math.abs(b));

/**
 * The text a field shows: what was typed, as long as it still means the value; else the value in the unit shown.
 * (A fix or an undo may have changed the value behind the words.)
 */
export function shownText(
  value: number | null | undefined,
  typed: string | undefined,
  quantity: Quantity,
  unit: string,
): string {
  if (value === null || value === undefined) return '';
  if (typed !== undefined) {
    const read = readQuantity(typed, quantity, unit);
    if (read.ok && same(read.si, value)) return typed;
  }
  return say(quantity, value, unit);
}

/** In a column whose head names the unit the number stands alone; a figure typed in another unit keeps its name. */
export function bareText(
  value: number | null | undefined,
  typed: string | undefined,
  quantity: Quantity,
  unit: string,
): string {
  if (value === null || value === undefined) return '';
  const text = shownText(value, typed, quantity, unit);
  if (text === say(quantity, value, unit)) return sayIn(quantity, value, unit);
  return text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text;
}

/** "150" becomes "150 mm" when the field is left, so that the words mean the same whatever unit is chosen later. */
export function withUnitNamed(text: string, quantity: Quantity, unit: string): string {
  const trimmed = text.trim();
  const other = unitsOf(quantity).find((u) => u.unit !== unit && u.offset === 0);
  const read = readQuantity(trimmed, quantity, unit);
  if (!read.ok || !other) return trimmed;
  const elsewhere = readQuantity(trimmed, quantity, other.unit);
  const named = elsewhere.ok && same(elsewhere.si, read.si) && read.si !== 0;
  return named || unit === '1' ? trimmed : `${trimmed} ${unit}`;
}

/** The small line under a field: the user's own unit if another was typed, else the twin. */
export function echoOf(si: number, typedUnit: string, quantity: Quantity, unit: string): string {
  if (typedUnit !== unit) return say(quantity, si, unit);
  return sayTwin(si, unit) ?? '';
}

/** The same value as a plain number in a unit of any spelling, as the chart reader wants its axis ends; null if it isn't one. */
export function numberIn(text: string, quantity: Quantity, unit: string): number | null {
  const read = readQuantity(text, quantity, unit);
  const known = unitByName(unit, quantity);
  return read.ok && known ? fromBase(read.si, known) : null;
}
