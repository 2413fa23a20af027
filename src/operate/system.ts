import type { Air } from '../air/air.ts';
import type { Ductwork } from '../job/types.ts';
import {
  compileNetwork,
  createState,
  solveAtFlow,
  solveWithFan,
  totalLoss_Pa,
  totalSlope,
  type FilterState,
  type FlowState,
  type Network,
} from '../duct/index.ts';
import type { CurveAt } from '../fan/model.ts';

/** The ducts of one gate plan and filter state, asked for their loss at any flow. */
export type System = {
  network: Network;
  /** total-pressure loss [Pa] of suction side and way out; Infinity where no such flow can pass */
  loss_Pa(flow_m3_s: number): number;
  /** everything solved where the fan meets the system inside a bracket that holds one crossing */
  meet(fan: CurveAt, bracket: readonly [number, number]): FlowState;
  /** everything solved at a flow, in a state of its own */
  at(flow_m3_s: number): FlowState;
};

/** Compiles the ducts for one stand of the gates and one filter state. Flows [m3/s], pressures [Pa]. */
export function systemOf(
  ductwork: Ductwork,
  given: { air: Air; open: ReadonlySet<string>; filterState: FilterState; outletArea_m2: number | null },
): System {
  const network = compileNetwork(ductwork, given);
  const warm = createState(network);
  return {
    network,
    loss_Pa: (flow) => (flow > 0 && network.blocked ? Infinity : totalLoss_Pa(solveAtFlow(network, flow, warm))),
    meet(fan, bracket) {
      const step = 1e-5 * bracket[1];
      const slope = (q: number) =>
        (fan.total_Pa(q + step) - fan.total_Pa(Math.max(q - step, 0))) / (step + Math.min(step, q));
      return solveWithFan(network, { pressure_Pa: fan.total_Pa, slope }, bracket);
    },
    at: (flow) => solveAtFlow(network, network.blocked ? 0 : flow),
  };
}

/** Loss and slope of a system on a net of flows, and by cubic between them: the curve rises smoothly, the cubic is right to 1e-5. */
export type SystemCurve = { flows_m3_s: Float64Array; loss_Pa: Float64Array; value_Pa(flow_m3_s: number): number };

/** Solves the system on an evenly spaced net of flows [m3/s] that starts at 0. */
export function systemCurve(system: System, flows: Float64Array): SystemCurve {
  const { network } = system;
  const loss = new Float64Array(flows.length);
  const slope = new Float64Array(flows.length);
  const state = createState(network);
  for (let i = 0; i < flows.length; i++) {
    if (network.blocked) {
      loss[i] = flows[i]! > 0 ? Infinity : 0;
      continue;
    }
    solveAtFlow(network, flows[i]!, state);
    loss[i] = totalLoss_Pa(state);
    slope[i] = totalSlope(state);
  }
  const last = flows.length - 1;
  const spacing = flows[last]! / last;
  return {
    flows_m3_s: flows,
    loss_Pa: loss,
    value_Pa(flow) {
      const i = Math.min(Math.max(Math.floor(flow / spacing), 0), last - 1);
      const t = flow / spacing - i;
      if (network.blocked) return flow > 0 ? Infinity : 0;
      const s = 1 - t;
      return (
        s * s * (1 + 2 * t) * loss[i]! +
        t * t * (3 - 2 * t) * loss[i + 1]! +
        spacing * t * s * (s * slope[i]! - t * slope[i + 1]!)
      );
    },
  };
}
