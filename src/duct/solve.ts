import { createState, totalLoss_Pa, totalSlope, type FlowState } from './flow-state.ts';
import type { Network } from './network.ts';
import { evaluateRows, gatherTangents, shareBySquareLaw, spreadTangents } from './tree-pass.ts';

/**
 * How the tree is solved. Every row's loss is a rising function of its flow, so the flows of a tree are the minimum of a
 * convex function and there is exactly one answer. Newton's step for all flows at once is one sweep up the tree (series and
 * parallel tangents) and one down: linear in the number of sections. Where a step would change a flow more than threefold,
 * the flows are shared by square law instead, which is exact for the usual losses from any start and cannot overshoot.
 */

/** Below this relative change the next step would be about its square: below rounding. */
const CLOSE_ENOUGH = 1e-6;
/** A square-law share that moved flows less than this is near enough for Newton. */
const NEAR = 0.5;
const MOST_PASSES = 300;
/** With a fan, joint steps are tried this often before the root is bracketed the slow way. */
const MOST_JOINT_PASSES = 14;

/** A fan as the solver sees it: total pressure and its slope at a flow. */
export type FanCurve = {
  /** fan total pressure [Pa] at a flow [m3/s] */
  pressure_Pa(flow_m3_s: number): number;
  /** d pressure / d flow there [Pa/(m3/s)] */
  slope(flow_m3_s: number): number;
};

/** Starts every row: each opening an equal share, or the last solve's flows in proportion. */
function start(network: Network, state: FlowState, totalFlow: number): void {
  const { parent, leaf, activeCount } = network;
  const { flow } = state.work;
  if (state.solved && state.totalFlow_m3_s > 0) {
    const ratio = totalFlow / state.totalFlow_m3_s;
    for (let row = 0; row <= activeCount; row++) flow[row]! *= ratio;
    flow[activeCount] = totalFlow;
    return;
  }
  let openings = 0;
  for (let row = 0; row < activeCount; row++) openings += leaf[row]!;
  flow.fill(0);
  for (let row = 0; row < activeCount; row++) {
    if (leaf[row] === 1) flow[row] = totalFlow / openings;
    flow[parent[row]!]! += flow[row]!;
  }
  flow[activeCount] = totalFlow;
}

/** Takes over the new flows; adds them up from the openings, so that every junction balances to the last digit. */
function accept(network: Network, state: FlowState, totalFlow: number): void {
  const { parent, leaf, activeCount } = network;
  const { flow, next, loss, slope } = state.work;
  for (let row = 0; row < activeCount; row++) {
    loss[row]! += slope[row]! * (next[row]! - flow[row]!);
    flow[row] = leaf[row] === 1 ? next[row]! : 0;
  }
  for (let row = 0; row < activeCount; row++) {
    const into = parent[row]!;
    if (into < activeCount) flow[into]! += flow[row]!;
  }
  loss[activeCount]! += slope[activeCount]! * (totalFlow - flow[activeCount]!);
  flow[activeCount] = totalFlow;
}

/** Takes over new flows on the way. */
function moveTo(state: FlowState, totalFlow: number): void {
  const { flow, next } = state.work;
  const last = flow.length - 1;
  for (let row = 0; row < last; row++) flow[row] = next[row]!;
  flow[last] = totalFlow;
}

/** Results by section, in the job's order, from the rows. Sections without air hang at the suction of what they lead to. */
function report(network: Network, state: FlowState): void {
  const { order, rowOf, target } = network;
  const { work, sectionFlow_m3_s, sectionLoss_Pa, startSuction_Pa, endSuction_Pa } = state;
  for (let place = order.length - 1; place >= 0; place--) {
    const section = order[place]!;
    const row = rowOf[section]!;
    const into = target[section]!;
    const end = into < 0 ? state.suction_Pa : startSuction_Pa[into]!;
    const lost = row < 0 ? 0 : work.loss[row]!;
    endSuction_Pa[section] = end;
    sectionFlow_m3_s[section] = row < 0 ? 0 : work.flow[row]!;
    sectionLoss_Pa[section] = lost;
    startSuction_Pa[section] = row >= 0 && network.leaf[row] === 1 ? 0 : end - lost;
  }
}

/** No air moves: nothing is lost, anywhere. */
function rest(network: Network, state: FlowState): FlowState {
  state.work.flow.fill(0);
  state.work.loss.fill(0);
  state.totalFlow_m3_s = state.suction_Pa = state.dischargeLoss_Pa = 0;
  state.suctionSlope = state.dischargeSlope = 0;
  state.iterations = state.residual = 0;
  state.solved = true;
  report(network, state);
  return state;
}

/**
 * Newton with square-law sharing as its safety net, at a given flow or, with a fan, at the flow where fan and system meet.
 * @returns whether it converged
 */
function iterate(
  network: Network,
  state: FlowState,
  totalFlow: number,
  passes: number,
  fan?: FanCurve,
  low = 0,
  high = 0,
): boolean {
  const { parent, leaf, losses, activeCount } = network;
  const { work } = state;
  let q = totalFlow;
  let change = state.solved && state.totalFlow_m3_s > 0 ? 0 : Infinity;
  start(network, state, q);
  state.solved = false;
  for (let pass = 1; pass <= passes; pass++) {
    state.iterations = pass;
    evaluateRows(losses, work);
    if (change < NEAR) {
      gatherTangents(parent, leaf, work);
      const stiffness = 1 / work.admittance[activeCount]!;
      const offset = work.drive[activeCount]! * stiffness;
      let to = q;
      if (fan !== undefined) {
        const fanSlope = fan.slope(q);
        const behind = work.slope[activeCount]!;
        const gap = fan.pressure_Pa(q) - work.loss[activeCount]! - offset - stiffness * q;
        to = q + gap / (stiffness + behind - fanSlope);
        if (!(to > low)) to = (q + low) / 2;
        if (!(to < high)) to = (q + high) / 2;
      }
      change = spreadTangents(parent, leaf, work, offset + stiffness * to);
      if (change < Infinity) {
        change = Math.max(change, Math.abs(to - q) / q);
        if (change < CLOSE_ENOUGH) {
          accept(network, state, to);
          state.totalFlow_m3_s = to;
          state.suction_Pa = offset + stiffness * to;
          state.suctionSlope = stiffness;
          state.dischargeLoss_Pa = work.loss[activeCount]!;
          state.dischargeSlope = work.slope[activeCount]!;
          state.residual = change;
          state.solved = true;
          return true;
        }
        moveTo(state, to);
        q = to;
        continue;
      }
    }
    change = shareBySquareLaw(parent, leaf, work, q);
    moveTo(state, q);
  }
  return false;
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
  // A state that the last solve spoilt would lead astray: begin again once.
  if (!iterate(network, state, totalFlow_m3_s, MOST_PASSES)) iterate(network, state, totalFlow_m3_s, MOST_PASSES);
  report(network, state);
  return state;
}

function ownState(network: Network, warmStart: FlowState | undefined): FlowState {
  if (warmStart === undefined) return createState(network);
  if (warmStart.network !== network) throw new RangeError('solve: the warm start belongs to another network');
  return warmStart;
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
  if (!iterate(network, state, guess, MOST_JOINT_PASSES, fan, low, high)) bracketRoot(network, fan, low, high, state);
  report(network, state);
  return state;
}

/** Newton within a shrinking bracket, halving where Newton would leave it; the tree is solved at every trial flow. */
function bracketRoot(network: Network, fan: FanCurve, low: number, high: number, state: FlowState): void {
  const gap = (q: number): number => fan.pressure_Pa(q) - systemLoss(network, q, state);
  const [atLow, atHigh] = [gap(low), gap(high)];
  if (atLow === 0 || atHigh === 0) return void gap(atLow === 0 ? low : high);
  if (atLow > 0 === atHigh > 0) {
    throw new RangeError(`solveWithFan: fan − system does not change its sign between ${low} and ${high} m3/s`);
  }
  let [a, b] = atLow > 0 ? [low, high] : [high, low];
  let q = (low + high) / 2;
  for (let round = 0; round < 200; round++) {
    const value = gap(q);
    if (value > 0) a = q;
    else b = q;
    if (value === 0 || Math.abs(a - b) <= 1e-12 * Math.max(a, b)) return;
    const newton = q + value / (totalSlope(state) - fan.slope(q));
    const inside = newton > Math.min(a, b) && newton < Math.max(a, b);
    const next = inside && round < 60 ? newton : (a + b) / 2;
    if (Math.abs(next - q) <= 1e-13 * q) return;
    q = next;
  }
}
