import { formatIn, type Quantity } from '../../src/units/index.ts';
import { readQuantity } from '../forms/quantity-text.ts';

/** Several readings in one cell, as they are written down one after another: "12 13 12,5". null where one of them is no number. */
export function readList(text: string, quantity: Quantity, unit: string): number[] | null {
  const parts = text.split(/[\s;]+/).filter((part) => part !== '');
  const values = parts.map((part) => readQuantity(part, quantity, unit));
  const numbers = values.flatMap((value) => (value.ok ? [value.si] : []));
  return numbers.length === values.length ? numbers : null;
}

export const listText = (values: readonly number[] | null | undefined, unit: string): string =>
  (values ?? []).map((value) => formatIn(value, unit).replace(/,/g, '')).join(' ');
