import type { FlowState } from './flow-state.ts';
import type { Network } from './network.ts';
import { evaluateRows } from './row-losses.ts';
import { gatherTangents, shareBySquareLaw, spreadTangents } from './tree-pass.ts';

/**
 * How a tree is solved. Every row's loss is a rising function of its flow, so the flows of a tree are the minimum of a
 * convex function and there is exactly one answer. Newton's step for all flows at once is one sweep up the tree (series and
 * parallel tangents) and one down: linear in the number of sections. Where a step would change a flow more than threefold,
 * the flows are shared by square law instead, which is exact for the usual losses from any start and cannot overshoot.
 * With a fan, its tangent closes the circuit at the blower and the flow through it is found in the same steps.
 */

/** Below this relative change the next one would be about its square: 1e-10. */
const CLOSE_ENOUGH = 1e-5;
/** A square-law share that moved flows less than this is near enough for Newton. */
const NEAR = 0.5;

/** A fan as the solver sees it: total pressure and its slope at a flow. */
export type FanCurve = {
  /** fan total pressure [Pa] at a flow [m3/s] */
  pressure_Pa(flow_m3_s: number): number;
  /** d pressure / d flow there [Pa/(m3/s)] */
  slope(flow_m3_s: number): number;
};

/** Where a fan and the system are expected to meet: between two flows [m3/s]. */
export type Meeting = { fan: FanCurve; low: number; high: number };

/** Starts every row: each opening with an equal share, or the last solve's flows in proportion. */
function start(network: Network, state: FlowState, totalFlow: number): void {
  const { parent, leaf, activeCount } = network;
  const { flow } = state.work;
  if (isWarm(state)) {
    const ratio = totalFlow / state.totalFlow_m3_s;
    if (ratio !== 1) for (let row = 0; row < activeCount; row++) flow[row]! *= ratio;
  } else {
    let openings = 0;
    for (let row = 0; row < activeCount; row++) openings += leaf[row]!;
    flow.fill(0);
    for (let row = 0; row < activeCount; row++) {
      if (leaf[row] === 1) flow[row] = totalFlow / openings;
      flow[parent[row]!]! += flow[row]!;
    }
  }
  flow[activeCount] = totalFlow;
}

const isWarm = (state: FlowState): boolean => state.solved && state.totalFlow_m3_s > 0;

/** Takes over the new flows on the way. */
function moveTo(work: FlowState['work'], totalFlow: number): void {
  const { flow, next } = work;
  const last = flow.length - 1;
  for (let row = 0; row < last; row++) flow[row] = next[row]!;
  flow[last] = totalFlow;
}

/** Takes over the last flows, adding them up from the openings: every junction balances to the last digit. */
function settle({ parent, leaf, activeCount }: Network, work: FlowState['work'], totalFlow: number): void {
  const { flow, next, loss, slope } = work;
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

/** Newton's next flow through the blower, kept inside the bracket. */
function meetingFlow({ fan, low, high }: Meeting, work: FlowState['work'], q: number): number {
  const last = work.flow.length - 1;
  const suctionSlope = work.stiffness[last]!;
  const gap = fan.pressure_Pa(q) - work.loss[last]! - (work.drive[last]! + q) * suctionSlope;
  const to = q + gap / (suctionSlope + work.slope[last]! - fan.slope(q));
  if (!(to > low)) return (q + low) / 2;
  return to < high ? to : (q + high) / 2;
}

/**
 * Solves the tree at a given flow through the blower or, with a meeting, at the flow where fan and system meet.
 * @param totalFlow flow [m3/s], > 0, or the first guess of it
 * @param mostPasses gives up after that many
 * @returns whether it converged; the state's work space and totals then hold the answer
 */
export function iterate(
  network: Network,
  state: FlowState,
  totalFlow: number,
  mostPasses: number,
  meeting?: Meeting,
): boolean {
  const { parent, leaf, losses, activeCount } = network;
  const { work } = state;
  let change = isWarm(state) ? 0 : Infinity;
  start(network, state, totalFlow);
  state.solved = false;
  let q = totalFlow;
  for (state.iterations = 1; state.iterations <= mostPasses; state.iterations++) {
    evaluateRows(losses, work);
    let to = q;
    let straight = change < NEAR;
    if (straight) {
      gatherTangents(parent, leaf, work);
      if (meeting !== undefined) to = meetingFlow(meeting, work, q);
      change = Math.max(spreadTangents(parent, leaf, work, to), Math.abs(to - q) / q);
      straight = change < Infinity;
    }
    if (!straight) {
      to = q;
      change = shareBySquareLaw(parent, leaf, work, q);
    } else if (change < CLOSE_ENOUGH) {
      settle(network, work, to);
      state.totalFlow_m3_s = to;
      state.suction_Pa = work.startSuction[activeCount]!;
      state.suctionSlope = work.stiffness[activeCount]!;
      state.dischargeLoss_Pa = work.loss[activeCount]!;
      state.dischargeSlope = work.slope[activeCount]!;
      state.residual = change;
      state.solved = true;
      return true;
    }
    moveTo(work, to);
    q = to;
  }
  return false;
}
