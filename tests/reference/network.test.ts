import { describe, expect, test } from 'vitest';
import {
  createState,
  ductworkIssues,
  solveAtFlow,
  solveWithFan,
  totalLoss_Pa,
  totalSlope,
} from '../../src/duct/index.ts';
import {
  compileReference,
  fanOf,
  jobDuctwork,
  REFERENCE_NETWORKS,
  suctionDuctwork,
  wayOutDuctwork,
  withOneFilter,
} from './network-form.ts';

/**
 * fixtures/reference/network.json, route A: Colebrook friction, all branch flows, node pressures and the fan flow by a
 * general root finder. Tolerance stated there: branch flow and node pressure 0.5 %, fan flow 0.2 %.
 */
describe.each(REFERENCE_NETWORKS)('$id', (reference) => {
  const [suction, wayOut] = [suctionDuctwork(reference), wayOutDuctwork(reference)];
  const network = compileReference(reference, suction);
  const out = createState(compileReference(reference, wayOut));
  const fan = fanOf(reference);
  // Seen from the suction side, the blower has what the way out leaves of its pressure.
  const fanLessWayOut = {
    pressure_Pa: (q: number) => fan.pressure_Pa(q) - totalLoss_Pa(solveAtFlow(out.network, q, out)),
    slope: (q: number) => fan.slope(q) - totalSlope(solveAtFlow(out.network, q, out)),
  };
  const mostFlow = reference.fan.points_Q_m3_s__ptotal_Pa.at(-1)![0];
  const state = solveWithFan(network, fanLessWayOut, [0, mostFlow]);
  solveAtFlow(out.network, state.totalFlow_m3_s, out);
  const flows = new Map([
    ...suction.sections.map(({ id }, i) => [id, state.sectionFlow_m3_s[i]!] as const),
    ...wayOut.sections.map(({ id }, i) => [id, out.sectionFlow_m3_s[i]!] as const),
  ]);

  test('is a possible ductwork', () => {
    expect([...ductworkIssues(suction), ...ductworkIssues(wayOut)]).toEqual([]);
  });

  test('fan flow and pressure', () => {
    const { Q_fan, fan_total_pressure } = reference.operating_point;
    expect(Math.abs(state.totalFlow_m3_s / Q_fan - 1)).toBeLessThan(0.002);
    expect(Math.abs((state.suction_Pa + out.suction_Pa) / fan_total_pressure - 1)).toBeLessThan(0.002);
  });

  test('every branch flow', () => {
    for (const { id, open, Q } of reference.branches) {
      if (!open) expect(flows.get(id)).toBe(0);
      else if (Q! > 0.01 * reference.operating_point.Q_fan) {
        expect(Math.abs(flows.get(id)! / Q! - 1), `flow in ${id}`).toBeLessThan(0.005);
      } else
        expect(Math.abs(flows.get(id)! - Q!), `flow in ${id}`).toBeLessThan(5e-5 * reference.operating_point.Q_fan);
    }
  });

  test('every node pressure on the suction side', () => {
    const nodeOf = (id: string) => reference.branches.find((branch) => branch.id === id)!.to;
    const judged = suction.sections.flatMap(({ id }, i) => {
      const expected_Pa = reference.node_pressure_A[nodeOf(id)];
      return expected_Pa === undefined ? [] : [{ node: nodeOf(id), expected_Pa, found_Pa: -state.endSuction_Pa[i]! }];
    });
    expect(judged.length).toBeGreaterThan(0);
    for (const { node, expected_Pa, found_Pa } of judged) {
      expect(Math.abs(found_Pa / expected_Pa - 1), `pressure at ${node}`).toBeLessThan(0.005);
    }
  });

  test('in a job’s own words, the way out as one run: fan flow 0.2 %, branches 0.5 %', () => {
    const ductwork = jobDuctwork(withOneFilter(reference));
    expect(ductworkIssues(ductwork)).toEqual([]);
    const found = solveWithFan(compileReference(reference, ductwork), fan, [0, mostFlow]);
    expect(Math.abs(found.totalFlow_m3_s / reference.operating_point.Q_fan - 1)).toBeLessThan(0.002);
    ductwork.sections.forEach(({ id }, i) => {
      const { Q, open } = reference.branches.find((branch) => branch.id === id)!;
      if (!open || Q! < 0.01 * reference.operating_point.Q_fan) return;
      expect(Math.abs(found.sectionFlow_m3_s[i]! / Q! - 1), `flow in ${id}`).toBeLessThan(0.005);
    });
  });
});
