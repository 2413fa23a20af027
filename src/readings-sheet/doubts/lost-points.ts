import type { Weighed } from '../columns/weigh-column.ts';
import type { NamedColumn } from '../heads/name-columns.ts';

/** Readings so small that nobody reads them off in whole numbers: a unit's name, and up to where. */
const NEVER_WHOLE: Readonly<Record<string, number>> = { A: 100, kW: 100, 'm³/s': 50, kPa: 20 };
/** Fewer readings do not tell, nor do such of one figure. */
const ENOUGH = 3;
const LEAST = 10;
/** Watts per ampere of any motor on any mains, from one that idles at 100 V to a full one of three phases at 690 V. */
const PER_AMPERE = { least: 15, most: 1200 };

type Column = Pick<NamedColumn, 'quantity' | 'unit'> & { readonly values: readonly (Weighed | null)[] };

/**
 * For each column whether its points may have been lost all together, so that none of its readings shows it: all are whole
 * where nobody reads whole numbers, or power and current cannot be those of one motor.
 */
export function lostPoints(columns: readonly Column[]): boolean[] {
  const current = columns.find(({ quantity }) => quantity === 'current_A');
  const power = columns.find(({ quantity }) => quantity === 'inputPower_W');
  const isOdd = current && power && !areOfOneMotor(power, current);
  return columns.map((column) => allWhole(column) || (isOdd === true && (column === current || column === power)));
}

function allWhole({ unit, values }: Column): boolean {
  const below = unit && NEVER_WHOLE[unit.unit];
  const read = values.filter((w) => w !== null);
  if (!below || read.length < ENOUGH || read.some(({ text }) => text.includes('.'))) return false;
  const most = Math.max(...read.map(({ value }) => value));
  return most >= LEAST && most < below;
}

function areOfOneMotor(power: Column, current: Column): boolean {
  const watts = power.unit?.unit === 'kW' ? 1000 : 1;
  const shares = power.values
    .flatMap((p, row) => {
      const amps = current.values[row]?.value;
      return p && amps ? [(p.value * watts) / amps] : [];
    })
    .sort((a, b) => a - b);
  const middle = shares[shares.length >> 1];
  return middle === undefined || (middle > PER_AMPERE.least && middle < PER_AMPERE.most);
}
