import {
  formatIn,
  formatNumber,
  formatQuantity,
  formatRange,
  formatTwin,
  unitByName,
  type Quantity,
} from '../../src/units/index.ts';
import { settings, unitOf } from '../state/settings.ts';

/** Numbers as this user reads them: in the chosen unit, with the chosen digits. All rounding is done in src/units. */

/** The unit a quantity is shown in now. */
export const unitFor = (quantity: Quantity): string =>
  unitOf(quantity) ?? unitByName('', quantity)?.unit ?? FALLBACK[quantity] ?? '1';

const FALLBACK: Partial<Record<Quantity, string>> = {
  volume: 'L',
  voltage: 'V',
  current: 'A',
  frequency: 'Hz',
  density: 'kg/m³',
  time: 's',
  mass: 'kg',
  'mass-flow': 'kg/h',
  angle: '°',
  fraction: '%',
  capacity: 'µF',
};

/** Western digits as they stand on tape and plate, unless the user chose ۰۱۲۳. */
export const digits = (text: string): string =>
  settings.value.digits === 'eastern' ? text.replace(/[0-9]/g, (d) => String.fromCharCode(0x06f0 + Number(d))) : text;

/** A figure with its unit reads from left to right inside a sentence that runs the other way (Unicode isolates). */
export const isolated = (text: string): string =>
  settings.value.language === 'ur' && text !== '' ? `\u2066${text}\u2069` : text;

/** "1,200 m³/h"; an empty text where nothing is known. */
export const say = (quantity: Quantity, si: number | null | undefined, unit?: string): string =>
  si === null || si === undefined ? '' : digits(formatQuantity(si, unit ?? unitFor(quantity)));

/** The number alone, for columns and axes whose head names the unit. */
export const sayIn = (quantity: Quantity, si: number | null | undefined, unit?: string): string =>
  si === null || si === undefined ? '' : digits(formatIn(si, unit ?? unitFor(quantity)));

/** "280–340 m³/h". */
export const sayRange = (quantity: Quantity, low: number, high: number): string =>
  digits(formatRange(low, high, unitFor(quantity)));

/** The same value in the twin unit, small beside it; null where the unit has none. */
export function sayTwin(si: number, unit: string): string | null {
  const twin = formatTwin(si, unit);
  return twin === null ? null : digits(twin);
}

/** A plain number: a count, a price, a share of ten. */
export const sayNumber = (value: number, decimals = 0): string => digits(formatNumber(value, decimals));
