import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  createState,
  solveAtFlow,
  solveWithFan,
  totalLoss_Pa,
  totalSlope,
  type FanCurve,
  type FlowState,
} from '../../src/duct/index.ts';
import { ENGINE_MINOR_LOSS_FACTOR, loadEngine, type Engine } from './epanet.ts';
import {
  compileReference,
  fanOf,
  REFERENCE_NETWORKS,
  suctionDuctwork,
  wayOutDuctwork,
  type Branch,
  type ReferenceNetwork,
} from './network-form.ts';

/**
 * The twelve networks against a general pipe-network engine (EPANET 2.3 as epanet-js 0.9.0), running beside us.
 * With the engine's own friction formula in both: 0.1 %. With Colebrook on our side: what the formulas differ by, which
 * fixtures/reference/network.json states for each network (`A_vs_B_flow`); at most 0.57 %.
 */

type Flows = Map<string, number>;

/** Fan and flows by our solver, with the way out as a tree of its own. */
function solve(reference: ReferenceNetwork): Flows {
  const [suction, wayOut] = [suctionDuctwork(reference), wayOutDuctwork(reference)];
  const out = createState(compileReference(reference, wayOut));
  const at = (q: number): FlowState => solveAtFlow(out.network, q, out);
  const whole = fanOf(reference);
  const fan: FanCurve = {
    pressure_Pa: (q) => whole.pressure_Pa(q) - totalLoss_Pa(at(q)),
    slope: (q) => whole.slope(q) - totalSlope(at(q)),
  };
  const state = solveWithFan(compileReference(reference, suction), fan, [
    0,
    reference.fan.points_Q_m3_s__ptotal_Pa.at(-1)![0],
  ]);
  at(state.totalFlow_m3_s);
  return new Map([
    ['FAN', state.totalFlow_m3_s],
    ...suction.sections.map(({ id }, i): [string, number] => [id, state.sectionFlow_m3_s[i]!]),
    ...wayOut.sections.map(({ id }, i): [string, number] => [id, out.sectionFlow_m3_s[i]!]),
  ]);
}

/** The engine's friction factor: Swamee–Jain above Re 4000 (all branches of 1 % of the fan flow and more are there). */
function engineFriction({ D, eps }: Branch, flow: number, { rho, mu }: ReferenceNetwork): number {
  const reynolds = (4 * rho * flow) / (Math.PI * D * mu);
  return 0.25 / Math.log10(eps / (3.7 * D) + 5.74 / reynolds ** 0.9) ** 2;
}

/** Our solver with the engine's friction: pipes are said as coefficients f·L/D, brought up to date until nothing moves. */
function solveWithEngineFriction(reference: ReferenceNetwork): Flows {
  let flows = solve(reference);
  for (let round = 0; round < 40; round++) {
    const branches = reference.branches.map((branch): Branch => {
      if (!branch.open || !flows.get(branch.id)) return branch;
      const friction = (engineFriction(branch, flows.get(branch.id)!, reference) * branch.L) / branch.D;
      const losses = Object.entries(branch.K).map(([name, k]) => [name, k * ENGINE_MINOR_LOSS_FACTOR] as const);
      return { ...branch, L: 0, K: { ...Object.fromEntries(losses), friction } };
    });
    const next = solve({ ...reference, branches });
    const moved = Math.max(...[...next].map(([id, q]) => Math.abs(q - flows.get(id)!)));
    flows = next;
    if (moved < 1e-9) break;
  }
  return flows;
}

describe.each(REFERENCE_NETWORKS)('$id', (reference) => {
  let engine: Engine;
  beforeAll(async () => {
    engine = await loadEngine(reference);
  });
  afterAll(() => engine.close());

  const judged = reference.branches
    .filter(({ open, Q }) => open && Q! > 0.01 * reference.operating_point.Q_fan)
    .map(({ id }) => id);

  test('with the same friction formula: 0.1 % on every flow', () => {
    const flows = solveWithEngineFriction(reference);
    for (const id of ['FAN', ...judged]) {
      expect(Math.abs(flows.get(id)! / engine.flow_m3_s(id) - 1), `flow in ${id}`).toBeLessThan(0.001);
    }
  });

  test('with Colebrook: 0.2 % on the fan flow, 0.5 % on branches or what the formulas differ by', () => {
    const flows = solve(reference);
    expect(Math.abs(flows.get('FAN')! / engine.flow_m3_s('FAN') - 1)).toBeLessThan(0.002);
    const limit = Math.max(0.005, 1.02 * reference.differences.A_vs_B_flow);
    for (const id of judged) {
      expect(Math.abs(flows.get(id)! / engine.flow_m3_s(id) - 1), `flow in ${id}`).toBeLessThan(limit);
    }
  });
});
