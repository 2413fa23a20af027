import { toBase, unitCalled } from '../../units/names.ts';
import type { NamedColumn } from '../heads/name-columns.ts';
import type { ColumnQuantity } from '../quantities.ts';
import type { Weighed } from './weigh-column.ts';

/** How large the largest reading of a test on a blower a workshop may own can be, SI: outside, name or unit was misread. */
const POSSIBLE: Record<ColumnQuantity, readonly [number, number]> = {
  opening: [1, 200],
  opening_pct: [5, 100],
  orificeDiameter_m: [0.004, 2],
  staticPressure_Pa: [50, 60_000],
  velocityPressure_Pa: [2, 10_000],
  velocity_m_s: [1, 120],
  flow_m3_s: [0.002, 100],
  current_A: [0.1, 600],
  speed_rpm: [200, 60_000],
  inputPower_W: [40, 400_000],
};
/** What is left of the sureness of a name whose readings are impossible. */
const IMPOSSIBLE = 0.5;

/** What a unit may have been before a part of it was lost. */
const MISREAD: Readonly<Record<string, string>> = { 'L/min': 'm³/min', 'L/s': 'm³/s', W: 'kW' };

/** A column's name, doubted where its readings cannot be; its unit the one it may have been misread from, where that can be. */
export function asPossible(column: NamedColumn, values: readonly (Weighed | null)[]): NamedColumn {
  if (isPossible(column, values)) return column;
  const doubted = { ...column, sureness: IMPOSSIBLE * column.sureness };
  const meant = column.unit && MISREAD[column.unit.unit];
  const other = meant ? { ...doubted, unit: unitCalled(meant) } : doubted;
  return isPossible(other, values) ? other : doubted;
}

function isPossible({ quantity, unit }: NamedColumn, values: readonly (Weighed | null)[]): boolean {
  const sure = values.flatMap((w) => (w && w.chance > 0.7 ? [w.value] : []));
  if (!quantity || !sure.length || (!unit && quantity !== 'opening')) return true;
  const most = unit && quantity !== 'opening_pct' ? toBase(Math.max(...sure), unit) : Math.max(...sure);
  const [low, high] = POSSIBLE[quantity];
  return most >= low && most <= high;
}
