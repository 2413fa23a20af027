import { toBase } from '../../units/names.ts';
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

/** A column's name, doubted where its readings cannot be. */
export function asPossible(column: NamedColumn, values: readonly (Weighed | null)[]): NamedColumn {
  const { quantity, unit, sureness } = column;
  const sure = values.flatMap((w) => (w && w.chance > 0.7 ? [w.value] : []));
  if (!quantity || !sure.length || (!unit && quantity !== 'opening')) return column;
  const most = unit && quantity !== 'opening_pct' ? toBase(Math.max(...sure), unit) : Math.max(...sure);
  const [low, high] = POSSIBLE[quantity];
  return most < low || most > high ? { ...column, sureness: IMPOSSIBLE * sureness } : column;
}
