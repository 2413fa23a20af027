import { formatNumber } from '../../src/units/index.ts';
import { readCount } from '../forms/count-text.ts';

export type Price = { amount: number; currency: string };

export const priceText = (price: Price | null | undefined): string =>
  price ? `${formatNumber(price.amount, 0)} ${price.currency}`.trim() : '';

/** "9,000 KES", "KES 9 000", "$45"; null for an empty field. Prices of scrap are whole numbers. */
export function readPrice(text: string): Price | null | 'not-a-price' {
  if (text.trim() === '') return null;
  const number = /[\d\u0660-\u0669\u06f0-\u06f9][\d\u0660-\u0669\u06f0-\u06f9,. ']*/.exec(text)?.[0] ?? '';
  const whole = number.replace(/[.,]\d{2}\s*$/, '').replace(/[,. ']/g, '');
  const high = whole.slice(0, -4);
  const low = readCount(whole.slice(-4));
  const top = high === '' ? 0 : readCount(high);
  const currency = text.replace(number, ' ').trim().slice(0, 10);
  if (low === null || top === null || /\d/.test(currency)) return 'not-a-price';
  return { amount: top * 10_000 + low, currency };
}
