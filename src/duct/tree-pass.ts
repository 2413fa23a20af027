import type { FlowState } from './flow-state.ts';

/**
 * Gathers the tangents of all rows towards the blower: series add, parallels add their inverses.
 * Afterwards the blower's suction at a flow Q is (drive + Q)·stiffness of the last row.
 */
export function gatherTangents(parent: Int32Array, leaf: Uint8Array, work: FlowState['work']): void {
  const { flow, loss, slope, yielding, pull, admittance, drive, stiffness } = work;
  const rows = parent.length;
  admittance.fill(0);
  drive.fill(0);
  for (let row = 0; row < rows; row++) {
    const s = slope[row]!;
    const ownOffset = loss[row]! - s * flow[row]!;
    let y: number;
    let yieldedOffset: number;
    if (leaf[row] === 1) {
      y = 1 / s;
      yieldedOffset = ownOffset * y;
    } else {
      // 1/(s + 1/a) with one division, which the next row down waits for; the other is off that path.
      const a = admittance[row]!;
      const through = 1 / (1 + s * a);
      y = a * through;
      yieldedOffset = ownOffset * y + drive[row]! * through;
      stiffness[row] = 1 / a;
    }
    yielding[row] = y;
    pull[row] = yieldedOffset;
    const into = parent[row]!;
    admittance[into]! += y;
    drive[into]! += yieldedOffset;
  }
  stiffness[rows] = 1 / admittance[rows]!;
}

/**
 * Shares the blower's flow down the tree by the tangents: new flows into `work.next`, suctions at the rows' starts. Each
 * junction's suction is worked out from what lies upstream of it, so that a nearly closed gate downstream, which eats all
 * the suction, takes no digits from the flows above it.
 * @returns largest relative change of a flow; Infinity when a flow would change more than threefold or turn round, where
 *          the tangents mean nothing
 */
export function spreadTangents(
  parent: Int32Array,
  leaf: Uint8Array,
  work: FlowState['work'],
  totalFlow: number,
): number {
  const { flow, next, yielding, pull, drive, stiffness, startSuction } = work;
  const rows = parent.length;
  startSuction[rows] = (drive[rows]! + totalFlow) * stiffness[rows]!;
  let change = 0;
  for (let row = rows - 1; row >= 0; row--) {
    const q = flow[row]!;
    const to = startSuction[parent[row]!]! * yielding[row]! - pull[row]!;
    if (!(to > 0.33 * q && to < 3 * q)) return Infinity;
    const moved = to > q ? to - q : q - to;
    if (moved > change * q) change = moved / q;
    next[row] = to;
    startSuction[row] = leaf[row] === 1 ? 0 : (drive[row]! + to) * stiffness[row]!;
  }
  return change;
}

/**
 * Shares the total flow as if every row lost with the square of its flow, with the resistance it has now: exact for pure
 * square laws from any start, always positive, and never further from the truth than before. New flows into `work.next`.
 * Uses `admittance` for the sums of 1/√resistance.
 * @returns largest relative change of a flow
 */
export function shareBySquareLaw(
  parent: Int32Array,
  leaf: Uint8Array,
  work: FlowState['work'],
  totalFlow: number,
): number {
  const { flow, next, loss, yielding, admittance } = work;
  const rows = parent.length;
  admittance.fill(0);
  for (let row = 0; row < rows; row++) {
    const q = flow[row]!;
    let resistance = loss[row]! / (q * q);
    if (leaf[row] === 0) resistance += 1 / (admittance[row]! * admittance[row]!);
    const conductance = 1 / Math.sqrt(resistance);
    yielding[row] = conductance;
    admittance[parent[row]!]! += conductance;
  }
  next[rows] = totalFlow;
  let change = 0;
  for (let row = rows - 1; row >= 0; row--) {
    const into = parent[row]!;
    const to = (next[into]! * yielding[row]!) / admittance[into]!;
    const relative = Math.abs(to - flow[row]!) / Math.max(to, flow[row]!);
    if (relative > change) change = relative;
    next[row] = to;
  }
  return change;
}
