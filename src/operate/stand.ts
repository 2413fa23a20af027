import type { RunSpeed } from '../assessment.ts';
import { lowestVelocity_m_s, transportOf, type FilterState, type Material, type TransportRun } from '../duct/index.ts';
import type { Ductwork } from '../job/types.ts';
import { loadAt } from '../motor/index.ts';
import type { Candidate } from './candidate.ts';
import { operatingPoints } from './operating-points.ts';
import { systemCurve, systemOf } from './system.ts';

/** Name of the run behind the blower among the sections. */
export const DISCHARGE = 'discharge';

/** What the best curve makes of one way the gates may stand: without chances, to try things out. */
export type Stand = {
  totalFlow_m3_s: number;
  flow_m3_s: ReadonlyMap<string, number>;
  /** judged runs, by id */
  runs: ReadonlyMap<string, RunSpeed>;
  /** runs in which dust settles */
  slow: RunSpeed[];
  loadFraction: number;
};

/** How many flows of the net the system is solved at: its cubic is then right to a thousandth, and the point itself is solved. */
const COARSE = 20;

/**
 * Solves one blower in one ductwork with these gates open; null where it finds no stable point.
 * @param material the job's material
 */
export function standOf(
  { estimate, draws, air, motor, outletArea_m2 }: Candidate,
  ductwork: Ductwork,
  material: Material,
  open: ReadonlySet<string>,
  filterState: FilterState,
): Stand | null {
  if (estimate === null || draws === null) return null;
  const system = systemOf(ductwork, { air, open, filterState, outletArea_m2 });
  const most = draws.flows_m3_s[draws.flows_m3_s.length - 1]!;
  const net = Float64Array.from({ length: COARSE + 1 }, (_, i) => (i / COARSE) * most);
  const { least } = operatingPoints(estimate, system, systemCurve(system, net));
  if (least === null) return null;
  const transport = transportOf(system.network, material);
  const flow_m3_s = new Map(ductwork.sections.map(({ id }, i) => [id, least.state.sectionFlow_m3_s[i]!]));
  const runs = new Map<string, RunSpeed>();
  const add = (id: string, run: TransportRun, flow: number) => {
    const velocity_m_s = lowestVelocity_m_s(run, flow);
    if (run.judged && velocity_m_s !== null && run.minimumVelocity_m_s !== null)
      runs.set(id, { id, velocity_m_s, minimumVelocity_m_s: run.minimumVelocity_m_s });
  };
  ductwork.sections.forEach(({ id }, i) => add(id, transport.sections[i]!, flow_m3_s.get(id)!));
  add(DISCHARGE, transport.discharge, least.flow_m3_s);
  return {
    totalFlow_m3_s: least.flow_m3_s,
    flow_m3_s,
    runs,
    slow: [...runs.values()].filter((run) => run.velocity_m_s < run.minimumVelocity_m_s),
    loadFraction: loadAt(motor, least.shaftPower_W).loadFraction,
  };
}
