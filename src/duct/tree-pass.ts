import {
  blendedFriction,
  colebrookInverseRoot,
  colebrookReynoldsExponent,
  LAMINAR_END,
  TURBULENT_START,
} from '../pipe/index.ts';
import type { FlowState } from './flow-state.ts';
import type { LossTable } from './loss-table.ts';

/** Loss and slope of every row, the run behind the blower included, at the flows in `work.flow`. */
export function evaluateRows(table: LossTable, work: FlowState['work']): void {
  const { quadratic, frictionStart, frictionScale, reynoldsScale, roughTerm, powerStart } = table;
  const { flow, loss, slope, inverseRoot } = work;
  const rows = quadratic.length;
  let item = 0;
  let powerItem = 0;
  for (let row = 0; row < rows; row++) {
    const q = flow[row]!;
    const square = q * q;
    let p = quadratic[row]! * square;
    // d ln p / d ln Q times p, summed; divided by Q at the end.
    let growth = 2 * p;
    for (const end = frictionStart[row + 1]!; item < end; item++) {
      const reynolds = reynoldsScale[item]! * q;
      const scale = frictionScale[item]! * square;
      if (reynolds >= TURBULENT_START) {
        const rough = roughTerm[item]!;
        const smooth = 2.51 / reynolds;
        const x = colebrookInverseRoot(rough, smooth, inverseRoot[item]!);
        inverseRoot[item] = x;
        const friction = scale / (x * x);
        p += friction;
        growth += friction * (2 + colebrookReynoldsExponent(rough, smooth, x));
      } else if (reynolds > LAMINAR_END) {
        const end = { logF: table.blendLogF[item]!, exponent: table.blendExponent[item]! };
        const { logF, exponent } = blendedFriction(reynolds, end);
        const friction = scale * Math.exp(logF);
        p += friction;
        growth += friction * (2 + exponent);
      } else {
        const friction = (frictionScale[item]! * 64 * q) / reynoldsScale[item]!;
        p += friction;
        growth += friction;
      }
    }
    for (const end = powerStart[row + 1]!; powerItem < end; powerItem++) {
      const exponent = table.powerExponent[powerItem]!;
      const power = table.powerCoefficient[powerItem]! * q ** exponent;
      p += power;
      growth += exponent * power;
    }
    loss[row] = p;
    slope[row] = growth / q;
  }
}

/**
 * Gathers the tangents of all rows towards the blower: series add, parallels add their inverses.
 * Afterwards the blower's suction is `drive/admittance + Q/admittance` of the last row.
 */
export function gatherTangents(parent: Int32Array, leaf: Uint8Array, work: FlowState['work']): void {
  const { flow, loss, slope, offset, stiffness, admittance, drive } = work;
  const rows = parent.length;
  admittance.fill(0);
  drive.fill(0);
  for (let row = 0; row < rows; row++) {
    let e = loss[row]! - slope[row]! * flow[row]!;
    let z = slope[row]!;
    if (leaf[row] === 0) {
      const upstream = 1 / admittance[row]!;
      e += drive[row]! * upstream;
      z += upstream;
    }
    offset[row] = e;
    stiffness[row] = z;
    const into = parent[row]!;
    const y = 1 / z;
    admittance[into]! += y;
    drive[into]! += e * y;
  }
}

/**
 * Hands the blower's suction down the tree: new flows into `work.next`, suctions at the rows' starts.
 * @returns largest relative change of a flow; Infinity when a flow would change more than threefold or turn round, where
 *          the tangents mean nothing
 */
export function spreadTangents(
  parent: Int32Array,
  leaf: Uint8Array,
  work: FlowState['work'],
  suction_Pa: number,
): number {
  const { flow, next, loss, slope, offset, stiffness, startSuction } = work;
  const rows = parent.length;
  startSuction[rows] = suction_Pa;
  let change = 0;
  for (let row = rows - 1; row >= 0; row--) {
    const end = startSuction[parent[row]!]!;
    const q = flow[row]!;
    const to = (end - offset[row]!) / stiffness[row]!;
    const ratio = to / q;
    if (!(ratio > 0.33 && ratio < 3)) return Infinity;
    const relative = ratio > 1 ? ratio - 1 : 1 - ratio;
    if (relative > change) change = relative;
    next[row] = to;
    startSuction[row] = leaf[row] === 1 ? 0 : end - loss[row]! - slope[row]! * (to - q);
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
  const { flow, next, loss, stiffness, admittance } = work;
  const rows = parent.length;
  admittance.fill(0);
  for (let row = 0; row < rows; row++) {
    const q = flow[row]!;
    let resistance = loss[row]! / (q * q);
    if (leaf[row] === 0) resistance += 1 / (admittance[row]! * admittance[row]!);
    const conductance = 1 / Math.sqrt(resistance);
    stiffness[row] = conductance;
    admittance[parent[row]!]! += conductance;
  }
  next[rows] = totalFlow;
  let change = 0;
  for (let row = rows - 1; row >= 0; row--) {
    const into = parent[row]!;
    const to = (next[into]! * stiffness[row]!) / admittance[into]!;
    const relative = Math.abs(to - flow[row]!) / Math.max(to, flow[row]!);
    if (relative > change) change = relative;
    next[row] = to;
  }
  return change;
}
