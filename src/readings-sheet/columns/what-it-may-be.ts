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
 * The larger half of some readings, which are whole where figures were lost, spans so much: of a speed less than the one, of
 * what rises more than the other, shares of the largest. Fewer do not tell.
 */
const STEADY = 0.06;
const UNSTEADY = 0.25;
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

/** How much the larger half of some readings spans, a share of the largest; null where they are too few. */
function changeOf(values: readonly number[]): number | null {
  if (values.length < ENOUGH_CHANGING) return null;
  const larger = values.toSorted((a, b) => a - b).slice(values.length >> 1);
  return 1 - larger[0]! / Math.max(larger.at(-1)!, 1e-9);
}
