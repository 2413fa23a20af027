import type { ChartHints } from '../api.ts';
import { numberIn, readQuantity } from '../forms/quantity-text.ts';
import type { Quantity } from '../../src/units/index.ts';
import type { AxisId, AxisQuantity, AxisWork, PhotoWork } from './photo-work.ts';

/** What the unit table calls the quantities of a chart. */
export const UNIT_QUANTITY: Record<AxisQuantity, Quantity> = {
  flow: 'flow',
  static_pressure: 'pressure',
  total_pressure: 'pressure',
  shaft_power: 'power',
  efficiency: 'fraction',
};

/** What still has to be done before the reader can be asked for the rest. */
export type Missing = 'corners' | AxisId;

type AxisHint = NonNullable<ChartHints['axes']>[number];

/** An axis with both its ends as numbers in its own unit; null while one of them is missing or both are the same. */
export function axisHint(axis: AxisWork): AxisHint | null {
  const quantity = UNIT_QUANTITY[axis.quantity];
  const min = numberIn(axis.minText, quantity, axis.unit);
  const max = numberIn(axis.maxText, quantity, axis.unit);
  if (min === null || max === null || min === max) return null;
  if (axis.scale === 'log' && (min <= 0 || max <= 0)) return null;
  return { id: axis.id, quantity: axis.quantity, unit: axis.unit, scale: axis.scale, min, max };
}

/** Work begun before readings filled the blanks has no mark: what has both its ends was typed. */
export const isSaid = (axis: AxisWork): boolean => axis.said ?? axis.maxText !== '';

/** A second scale that no tap uses yet may wait: what was read before stays on the photo. */
const isNeeded = (axis: AxisWork, work: PhotoWork): boolean =>
  axis.id === 'x' || axis.id === 'y1' || work.seeds.some((seed) => seed.yAxis === axis.id);

/** True when a tap on a curve of this axis can be followed. @param shown the work with what was read */
export const readyForTap = (shown: PhotoWork, yAxis: AxisId): boolean =>
  shown.placed.every(Boolean) &&
  ['x', yAxis].every((id) => shown.axes.some((axis) => axis.id === id && axisHint(axis) !== null));

/** What somebody has begun to say and not finished: until then the last answer stays. */
export function missingIn(work: PhotoWork): Missing[] {
  const missing: Missing[] = [];
  const some = work.placed.some(Boolean) || work.byHand === true;
  if (some && !work.placed.every(Boolean)) missing.push('corners');
  for (const axis of work.axes)
    if (isSaid(axis) && isNeeded(axis, work) && axisHint(axis) === null) missing.push(axis.id);
  return missing;
}

/** Everything said so far, as the reader wants it; it reads the rest. null while something is half said. */
export function hintsOf(work: PhotoWork): ChartHints | null {
  if (missingIn(work).length > 0) return null;
  const axes = work.axes.flatMap((axis) => (isSaid(axis) && axisHint(axis)) || []);
  const quantityOf = (id: string): string => work.axes.find((axis) => axis.id === id)?.quantity ?? 'static_pressure';
  return {
    ...(work.placed.every(Boolean) && { frameCorners_px: [...work.corners] }),
    ...(axes.length > 0 && { axes }),
    ...(work.seeds.length > 0 && {
      seeds: work.seeds.map((seed) => ({
        yAxis: seed.yAxis,
        quantity: seed.quantity ?? quantityOf(seed.yAxis),
        speed_rpm: speedOf(seed.speedText),
        point_px: seed.at,
      })),
    }),
  };
}

/** The speed written at a curve [1/min]; null where nothing (readable) is. */
export function speedOf(text: string): number | null {
  const read = readQuantity(text, 'speed', 'rpm');
  return read.ok ? read.si : null;
}

/** Weight of the chart's air [kg/m3]; null where the chart does not say. */
export function densityOf(text: string): number | null {
  const read = readQuantity(text, 'density', 'kg/m³');
  return read.ok ? read.si : null;
}
