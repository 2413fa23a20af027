import type { Quantity } from '../../src/units/index.ts';
import type { Say } from './why.ts';

/** What the last part of a number's name says of it. */
const QUANTITY_OF: Record<string, Quantity> = {
  m3_s: 'flow',
  m_s: 'velocity',
  m: 'length',
  Pa: 'pressure',
  V: 'voltage',
  A: 'current',
  W: 'power',
  rpm: 'speed',
  kg: 'mass',
  s: 'time',
};

/** Shares of one; everything else says its unit in its name. */
const SHARES: readonly string[] = ['load', 'loadNow', 'limit', 'low', 'high', 'share', 'step', 'probability'];

/** The core's numbers in the user's units, by their names; texts stay as they are, what is neither is left out. */
export function saidValues(values: Record<string, unknown>, say: Say): Record<string, string> {
  return Object.fromEntries(
    Object.entries(values).flatMap(([name, value]) => {
      if (typeof value === 'string') return [[name, value]];
      if (typeof value !== 'number') return [];
      const quantity = Object.entries(QUANTITY_OF).find(([suffix]) => name.endsWith(`_${suffix}`))?.[1];
      const said = quantity
        ? say.quantity(quantity, value)
        : SHARES.includes(name)
          ? say.percent(value)
          : say.number(value);
      return [[name, said]];
    }),
  );
}
