import type { Spelling } from '../cells/read-number.ts';
import type { ColumnQuantity } from '../quantities.ts';
import { mostCommon } from './most-common.ts';

/** Enough numbers to tell whether they count, and the share of them that must. */
const ENOUGH = 4;
const COUNTING = 0.5;
/** Numbers that do not even go as a count does this often count nothing. */
const HARDLY = 0.25;

/** Quantities that rise from nought as a blower's end is opened. */
const RISING: ReadonlySet<ColumnQuantity> = new Set([
  'opening_pct',
  'orificeDiameter_m',
  'velocityPressure_Pa',
  'velocity_m_s',
  'flow_m3_s',
]);
/**
 * From the middle one of some readings to the one that a quarter are larger than they change so much: what rises by more than
 * the one, a speed by less than the other, shares of the larger. Fewer do not tell.
 */
const STEADY = 0.04;
const UNSTEADY = 0.15;
const ENOUGH_CHANGING = 5;

/**
 * What the readings of a column say of its quantity before its name is believed: numbers that count the rows are nothing
 * else, and those that do not are no count; what hardly changes is no flow, and what changes much no speed of a motor.
 * @param cells spellings of each row, best first
 */
export function mayBeOf(cells: readonly (readonly Spelling[])[]): (quantity: ColumnQuantity) => boolean {
  const numbers = cells.flatMap(([best], row) => (best ? [{ value: Number(best.text), row }] : []));
  if (numbers.length < ENOUGH) return () => true;
  const share = (mostCommon(numbers.map(({ value, row }) => value - row))?.count ?? 0) / numbers.length;
  const change = changeOf(numbers.map(({ value }) => value));
  return (quantity) => {
    if (quantity === 'opening') return share > HARDLY;
    if (share >= COUNTING) return false;
    if (change === null) return true;
    return quantity === 'speed_rpm' ? change < UNSTEADY : !RISING.has(quantity) || change > STEADY;
  };
}

/** How much readings change where neither lost figures nor added ones show; null where they are too few. */
function changeOf(values: readonly number[]): number | null {
  if (values.length < ENOUGH_CHANGING) return null;
  const sorted = values.toSorted((a, b) => a - b);
  return 1 - sorted[values.length >> 1]! / Math.max(sorted[Math.floor(0.75 * values.length)]!, 1e-9);
}
