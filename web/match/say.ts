import type { Quantity } from '../../src/units/index.ts';
import { settings } from '../state/settings.ts';
import { say, sayIn, sayNumber, sayRange } from '../words/say.ts';
import type { Say } from './why.ts';

/** A figure and its unit read from left to right inside a sentence that runs the other way (Unicode isolates, so that drawings can hold them too). */
const isolated = (text: string): string =>
  settings.value.language === 'ur' && text !== '' ? `\u2066${text}\u2069` : text;

/** "20.0 m/s" says no more than "20 m/s". */
const short = (text: string): string => text.replace(/\.0(?=\D|$)/u, '');

export const sayShort = (quantity: Quantity, si: number | null | undefined): string =>
  isolated(short(say(quantity, si)));

/** The bare figure, for columns whose head names the unit. */
export const figure = (quantity: Quantity, si: number | null | undefined): string => short(sayIn(quantity, si));

/** Numbers the way this user reads them, for the pure sentences of this folder. */
export const saying: Say = {
  quantity: sayShort,
  range: (quantity, low, high) => isolated(sayRange(quantity, low, high)),
  percent: (share) => isolated(`${sayNumber(100 * share)} %`),
  number: (value) => sayNumber(value, Number.isInteger(value) ? 0 : 2),
};
