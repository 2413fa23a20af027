import { fromBase, unitByName, type Quantity } from '../../src/units/index.ts';
import { readQuantity, withUnitNamed } from '../forms/quantity-text.ts';

/** Figures printed on plates have no more than this many places that count. */
const PLACES = 5;

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-3 * Math.max(Math.abs(a), Math.abs(b));

/**
 * A figure as it first stands in its field: as it is printed, where those words mean the value; else the value in `unit`.
 * @param value in the base unit of the quantity
 */
export function figureText(value: number, printed: string, quantity: Quantity, unit: string): string {
  const read = printed === '' ? null : readQuantity(printed, quantity, unit);
  if (read?.ok && isSame(read.si, value)) return withUnitNamed(printed, quantity, unit);
  const known = unitByName(unit, quantity);
  const number = String(Number((known ? fromBase(value, known) : value).toPrecision(PLACES)));
  return unit === '1' ? number : `${number} ${unit}`;
}
