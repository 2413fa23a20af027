import { createState, totalLoss_Pa, totalSlope, type FlowState } from './flow-state.ts';
import { iterate, type FanCurve } from './iterate.ts';
import type { Network } from './network.ts';

/** Square-law sharing alone closes a tree to rounding in fewer; only a spoilt start could need more. */
const MOST_PASSES = 300;
/** With a fan, joint steps are tried this often before the root is bracketed the slow way. */
const MOST_JOINT_PASSES = 14;
/** Halving a bracket this often leaves nothing of it. */
const MOST_HALVINGS = 200;

/** Results by section, in the job's order, from the rows. Sections without air hang at the suction of what they lead to. */
function report({ order, rowOf, target, leaf }: Network, state: FlowState): void {
  const { work, sectionFlow_m3_s, sectionLoss_Pa, startSuction_Pa, endSuction_Pa } = state;
  for (let place = order.length - 1; place >= 0; place--) {
    const section = order[place]!;
    const row = rowOf[section]!;
    const into = target[section]!;
    const end = into < 0 ? state.suction_Pa : startSuction_Pa[into]!;
    endSuction_Pa[section] = end;
    sectionFlow_m3_s[section] = row < 0 ? 0 : work.flow[row]!;
    sectionLoss_Pa[section] = row < 0 ? 0 : work.loss[row]!;
    startSuction_Pa[section] = row < 0 ? end : leaf[row] === 1 ? 0 : work.startSuction[row]!;
  }
}

/** No air moves: nothing is lost, anywhere. */
function rest(network: Network, state: FlowState): FlowState {
  const { work } = state;
  for (const values of [work.flow, work.loss, work.slope, work.startSuction]) values.fill(0);
  state.totalFlow_m3_s = state.suction_Pa = state.dischargeLoss_Pa = 0;
  state.suctionSlope = state.dischargeSlope = 0;
  state.iterations = state.residual = 0;
  state.solved = true;
  report(network, state);
  return state;
}

function ownState(network: Network, warmStart: FlowState | undefined): FlowState {
  if (warmStart === undefined) return createState(network);
  if (warmStart.network !== network) throw new RangeError('solve: the warm start belongs to another network');
  return warmStart;
}

/**
 * Flows, losses and suctions of the whole tree at a given flow through the blower.
 * @param totalFlow_m3_s flow through the blower [m3/s], ≥ 0
 * @param warmStart      a state of the same network: it is overwritten and returned, and a near one saves passes
 * @throws RangeError for a flow that is negative or not finite, a flow above 0 through a `blocked` network (no suction
 *         brings it about), or a state of another network
 */
export function solveAtFlow(network: Network, totalFlow_m3_s: number, warmStart?: FlowState): FlowState {
  if (!(totalFlow_m3_s >= 0 && totalFlow_m3_s < Infinity)) {
    throw new RangeError(`solveAtFlow: totalFlow_m3_s must be finite and not below 0, received ${totalFlow_m3_s}`);
  }
  const state = ownState(network, warmStart);
  if (totalFlow_m3_s === 0) return rest(network, state);
  if (network.blocked) throw new RangeError('solveAtFlow: every opening is shut, so only a flow of 0 is possible');
  // A warm start from far away could lead astray; the second time starts cold.
  if (!iterate(network, state, totalFlow_m3_s, MOST_PASSES)) iterate(network, state, totalFlow_m3_s, MOST_PASSES);
  report(network, state);
  return state;
}

/** Loss of suction side and way out together [Pa] at a flow [m3/s]: one point of the system curve. Errors: as `solveAtFlow`. */
export const systemLoss = (network: Network, flow_m3_s: number, warmStart?: FlowState): number =>
  totalLoss_Pa(solveAtFlow(network, flow_m3_s, warmStart));

/**
 * The flow between `low` and `high` at which the fan's total pressure equals the system's loss, with everything solved there.
 * Fan and flows are solved together; should that not settle (kinked curves), the root is bracketed.
 * In a `blocked` network no air moves: flow 0, whatever the bracket.
 * @param bracket   flows [m3/s] with fan above system at one end and not above at the other, 0 ≤ low < high
 * @param warmStart a state of the same network: overwritten and returned
 * @throws RangeError when fan − system does not change its sign in the bracket, or as `solveAtFlow`
 */
export function solveWithFan(
  network: Network,
  fan: FanCurve,
  bracket: readonly [low: number, high: number],
  warmStart?: FlowState,
): FlowState {
  const [low, high] = bracket;
  if (!(low >= 0 && high > low && high < Infinity)) {
    throw new RangeError(`solveWithFan: expected 0 ≤ low < high, received ${low}, ${high}`);
  }
  const state = ownState(network, warmStart);
  if (network.blocked) return rest(network, state);
  const near = state.solved && state.totalFlow_m3_s > low && state.totalFlow_m3_s < high;
  const guess = near ? state.totalFlow_m3_s : (low + high) / 2;
  const met = iterate(network, state, guess, MOST_JOINT_PASSES, { fan, low, high });
  if (met) report(network, state);
  else bracketRoot(network, fan, low, high, state);
  return state;
}

/** Newton within a shrinking bracket, halving where Newton would leave it; the tree is solved at every trial flow. */
function bracketRoot(network: Network, fan: FanCurve, low: number, high: number, state: FlowState): void {
  const gap = (q: number): number => fan.pressure_Pa(q) - systemLoss(network, q, state);
  const atLow = gap(low);
  if (atLow === 0) return;
  const atHigh = gap(high);
  if (atHigh === 0) return;
  if (atLow > 0 === atHigh > 0) {
    throw new RangeError(`solveWithFan: fan − system does not change its sign between ${low} and ${high} m3/s`);
  }
  let above = atLow > 0 ? low : high;
  let below = atLow > 0 ? high : low;
  let q = (low + high) / 2;
  for (let round = 0; round < MOST_HALVINGS; round++) {
    const value = gap(q);
    if (value > 0) above = q;
    else below = q;
    if (value === 0 || Math.abs(above - below) <= 1e-12 * Math.max(above, below)) return;
    const newton = q + value / (totalSlope(state) - fan.slope(q));
    const inside = newton > Math.min(above, below) && newton < Math.max(above, below);
    const next = inside && round < MOST_HALVINGS / 4 ? newton : (above + below) / 2;
    if (Math.abs(next - q) <= 1e-13 * q) return;
    q = next;
  }
}
