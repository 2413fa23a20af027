export type Bracket = { low: number; high: number; stable: boolean };

/**
 * Where fan and system change places, rising in flow: one bracket for every crossing.
 * Stable where the fan's pressure falls below the system's as flow grows, so that a disturbance dies away.
 * @param knots flows [m3/s], rising from 0, fine enough that the difference changes sign at most once between two
 * @param fan, system total pressure [Pa] at a flow; the system's is Infinity where no such flow can pass
 */
export function crossings(
  knots: readonly number[],
  fan: (flow_m3_s: number) => number,
  system: (flow_m3_s: number) => number,
): Bracket[] {
  const found: Bracket[] = [];
  let before = fan(knots[0]!) - system(knots[0]!);
  for (let i = 1; i < knots.length; i++) {
    const here = fan(knots[i]!) - system(knots[i]!);
    if (before > 0 !== here > 0) found.push({ low: knots[i - 1]!, high: knots[i]!, stable: before > 0 });
    before = here;
  }
  return found;
}
