import { pointer, type Issue } from '../issues/result.ts';
import { toBase, unitByName } from '../units/names.ts';
import type { Quantity } from '../units/quantities.ts';
import type { Unit } from '../units/units.ts';
import type { AxisHint, AxisQuantity, ChartHints, SeedHint } from './hints.ts';

/** Hints that are well formed but can't be: an unknown unit, a scale without length, corners that are no quadrilateral. */

/** What the unit table calls the quantities of a chart's axes. Source: definition. */
export const UNIT_QUANTITY: Record<AxisQuantity, Quantity> = {
  flow: 'flow',
  static_pressure: 'pressure',
  total_pressure: 'pressure',
  shaft_power: 'power',
  efficiency: 'fraction',
};

/** What is wrong with hinted axes: doubled names, unknown units, empty or backward ranges, a logarithm of zero. Empty when all is well. */
export function checkAxes(axes: readonly AxisHint[]): Issue[] {
  const issues: Issue[] = [];
  axes.forEach((axis, i) => {
    const at = (field: string) => pointer('axes', i, field);
    if (axes.findIndex((a) => a.id === axis.id) !== i)
      issues.push({ code: 'duplicate-id', path: at('id'), message: `Two axes are called "${axis.id}".` });
    if (!unitOf(axis))
      issues.push({
        code: 'not-understood',
        path: at('unit'),
        message: `"${axis.unit}" is no unit of ${WORDS[axis.quantity]} we know.`,
      });
    if (axis.min === axis.max)
      issues.push({
        code: 'out-of-range',
        path: at('max'),
        message: 'An axis needs two different values at its two ends.',
      });
    else if (axis.scale === 'log' && !(axis.min > 0 && axis.max > 0))
      issues.push({
        code: 'out-of-range',
        path: at(axis.min > 0 ? 'max' : 'min'),
        message: 'A logarithmic axis starts and ends above zero.',
      });
  });
  return issues;
}

/** What is wrong with hinted seeds against the axes they name. Empty when all is well. */
export function checkSeeds(seeds: readonly SeedHint[], axes: readonly AxisHint[]): Issue[] {
  const issues: Issue[] = [];
  seeds.forEach((seed, i) => {
    const axis = axes.find((a) => a.id === seed.yAxis);
    if (!axis || axis.quantity === 'flow')
      issues.push({
        code: 'contradiction',
        path: pointer('seeds', i, 'yAxis'),
        message: `No upright axis is called "${seed.yAxis}".`,
      });
    else if (UNIT_QUANTITY[seed.quantity] !== UNIT_QUANTITY[axis.quantity])
      issues.push({
        code: 'contradiction',
        path: pointer('seeds', i, 'quantity'),
        message: `A curve of ${WORDS[seed.quantity]} can’t be read on an axis of ${WORDS[axis.quantity]}.`,
      });
  });
  return issues;
}

/** Corners in order, a convex four-sided figure of useful size, on or near the photo. */
export function checkCorners(
  corners: NonNullable<ChartHints['frameCorners_px']>,
  width_px: number,
  height_px: number,
): Issue[] {
  const path = pointer('frameCorners_px');
  const off = corners.findIndex(([x, y]) => x < -60 || y < -60 || x > width_px + 60 || y > height_px + 60);
  if (off >= 0)
    return [
      { code: 'out-of-range', path: pointer('frameCorners_px', off), message: 'This corner lies outside the photo.' },
    ];
  for (let i = 0; i < 4; i++) {
    const [a, b, c] = [corners[i]!, corners[(i + 1) % 4]!, corners[(i + 2) % 4]!];
    if (Math.hypot(b[0] - a[0], b[1] - a[1]) < SHORTEST_SIDE_PX)
      return [
        {
          code: 'out-of-range',
          path,
          message: `The plot frame is too small in this photo: each side needs at least ${SHORTEST_SIDE_PX} pixels.`,
        },
      ];
    // seen in the photo, the corners run against the clock
    if ((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) >= 0)
      return [
        {
          code: 'out-of-range',
          path,
          message: 'The four corners must run bottom-left, bottom-right, top-right, top-left around the plot frame.',
        },
      ];
  }
  return [];
}

const SHORTEST_SIDE_PX = 60;

const WORDS: Record<AxisQuantity, string> = {
  flow: 'air flow',
  static_pressure: 'pressure',
  total_pressure: 'pressure',
  shaft_power: 'power',
  efficiency: 'efficiency',
};

/** The unit an axis hint names, of its own quantity; null where the table knows none. */
export const unitOf = (axis: Pick<AxisHint, 'unit' | 'quantity'>): Unit | null => {
  // an efficiency without a unit is a plain fraction
  const text = axis.quantity === 'efficiency' && axis.unit.trim() === '' ? '1' : axis.unit;
  return unitByName(text, UNIT_QUANTITY[axis.quantity]);
};

/** Axis value in its printed unit → SI. */
export const toSI = (value: number, unit: Unit): number => toBase(value, unit);
