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

/** The two pressures go opposite ways under each other's names as well: neither is a witness for the other. */
const PRESSURES: ReadonlySet<ColumnQuantity> = new Set(['staticPressure_Pa', 'velocityPressure_Pa']);
/** Most tests begin with the end closed: the order of the rows says a little. */
const ORDER = 0.5;

/** For each column whether what the others say contradicts its name: most of those that can tell go the other way. */
export function contradicted(columns: readonly Column[]): boolean[] {
  const steps = (pairs: readonly (readonly [number, number])[]): number => {
    const signs = pairs.slice(1).map(([x, y], i) => Math.sign((x - pairs[i]![0]) * (y - pairs[i]![1])));
    if (signs.length < ENOUGH) return 0;
    const net = signs.reduce((sum, s) => sum + s, 0) / signs.length;
    return net < -AGAINST ? -1 : net > AGAINST ? 1 : 0;
  };
  const wayOf = ({ quantity }: Column): number => (quantity && WAY[quantity]) || 0;
  const agrees = (a: Column, b: Column): number => {
    if (a.quantity && b.quantity && PRESSURES.has(a.quantity) && PRESSURES.has(b.quantity)) return 0;
    const both = a.values.flatMap((v, row) => (v && b.values[row] ? [[v.value, b.values[row].value] as const] : []));
    return steps(both) * wayOf(a) * wayOf(b);
  };
  const inOrder = (own: Column): number =>
    ORDER * wayOf(own) * steps(own.values.flatMap((v, row) => (v ? [[v.value, row] as const] : [])));
  return columns.map((own) => {
    const votes = columns.filter((other) => other !== own).reduce((sum, other) => sum + agrees(own, other), 0);
    return votes + inOrder(own) < 0;
  });
}
