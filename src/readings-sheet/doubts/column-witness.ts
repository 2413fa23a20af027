import type { Weighed } from '../columns/weigh-column.ts';
import type { ColumnQuantity } from '../quantities.ts';

/**
 * Which way readings go as a blower's end is opened: flow rises and suction falls. The rest may go either way.
 * Source: B. Eck, Fans (1973), §1: characteristic curves.
 */
const WAY: Partial<Record<ColumnQuantity, 1 | -1>> = {
  opening_pct: 1,
  orificeDiameter_m: 1,
  flow_m3_s: 1,
  velocity_m_s: 1,
  velocityPressure_Pa: 1,
  staticPressure_Pa: -1,
};
/** So many steps of both tell, and so many of them must go against each other, net, to contradict. */
const ENOUGH = 4;
const AGAINST = 0.4;

type Column = { readonly quantity: ColumnQuantity | null; readonly values: readonly (Weighed | null)[] };

/** For each column whether what the others say contradicts its name: most of those that can tell go the other way. */
export function contradicted(columns: readonly Column[]): boolean[] {
  const agrees = (a: Column, b: Column): number => {
    const [wayA, wayB] = [a.quantity && WAY[a.quantity], b.quantity && WAY[b.quantity]];
    if (!wayA || !wayB) return 0;
    const rows = a.values.flatMap((v, row) => (v && b.values[row] ? [[v.value, b.values[row].value] as const] : []));
    const steps = rows.slice(1).map(([x, y], i) => Math.sign((x - rows[i]![0]) * (y - rows[i]![1])) * wayA * wayB);
    if (steps.length < ENOUGH) return 0;
    const net = steps.reduce((sum, s) => sum + s, 0) / steps.length;
    return net < -AGAINST ? -1 : net > AGAINST ? 1 : 0;
  };
  return columns.map((own) => {
    const votes = columns.filter((other) => other !== own).reduce((sum, other) => sum + agrees(own, other), 0);
    return votes < 0;
  });
}
