import { unitCalled } from '../../units/names.ts';
import type { NamedColumn } from '../heads/name-columns.ts';
import type { ColumnQuantity } from '../quantities.ts';
import type { Weighed } from './weigh-column.ts';

/** In what unit a column's largest value is, where its unit could not be read: only where sizes tell them apart. */
const BY_SIZE: Partial<Record<ColumnQuantity, readonly (readonly [number, number, string])[]>> = {
  opening_pct: [[5, 100, '%']],
  orificeDiameter_m: [[13, 600, 'mm']],
  current_A: [[0.2, 400, 'A']],
  speed_rpm: [[200, 60_000, 'rpm']],
  velocity_m_s: [
    [3, 70, 'm/s'],
    [500, 14_000, 'ft/min'],
  ],
  inputPower_W: [
    [0.1, 30, 'kW'],
    [90, 60_000, 'W'],
  ],
};
/** Telling by size is as sure as this. */
const SURENESS = 0.85;

/** Gives a column without a unit the one its values must be in; as it was where they do not tell. */
export function withUnit(column: NamedColumn, values: readonly (Weighed | null)[]): NamedColumn {
  const { quantity, unit, sureness } = column;
  const ranges = quantity && !unit ? BY_SIZE[quantity] : undefined;
  if (!ranges) return column;
  const sure = values.flatMap((w) => (w && w.chance > 0.7 ? [w.value] : []));
  const most = Math.max(...sure);
  const found = ranges.find(([low, high]) => most >= low && most <= high);
  if (!found || sure.length < 3) return column;
  return { quantity, unit: unitCalled(found[2]), sureness: Math.max(sureness, SURENESS) };
}
