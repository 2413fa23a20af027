import { bracketedRoot } from '../numeric/root.ts';

export type Crossing = { flow_m3_s: number; stable: boolean };

/**
 * Every flow at which fan and system have the same total pressure, rising in flow.
 * Stable where the fan's pressure falls below the system's as flow grows, so that a disturbance dies away.
 * @param knots flows, rising from 0, fine enough that the difference changes sign at most once between two
 * @param fan, system total pressure [Pa] at a flow; the system's is +Infinity where no such flow can pass
 */
export function crossings(
  knots: readonly number[],
  fan: (flow_m3_s: number) => number,
  system: (flow_m3_s: number) => number,
): Crossing[] {
  const excess = (q: number) => {
    const e = fan(q) - system(q);
    return e === -Infinity ? -Number.MAX_VALUE : e;
  };
  const found: Crossing[] = [];
  const top = knots[knots.length - 1] ?? 0;
  let before = excess(knots[0]!);
  for (let i = 1; i < knots.length; i++) {
    const here = excess(knots[i]!);
    if (before > 0 !== here > 0) {
      const flow = bracketedRoot(excess, knots[i - 1]!, knots[i]!, 1e-9 * top);
      found.push({ flow_m3_s: flow, stable: before > 0 });
    }
    before = here;
  }
  return found;
}
