import { blendedFriction, colebrookInverseRoot, LAMINAR_END, TURBULENT_START } from '../pipe/index.ts';
import type { FlowState } from './flow-state.ts';
import type { FrictionMemory } from './friction-memory.ts';
import type { LossTable } from './loss-table.ts';

/** 2/ln 10: log10 written with natural logarithms. */
const TWO_OVER_LN10 = 2 / Math.LN10;

/**
 * Flows within this of the last full visit take 1/√f from its Taylor series in ln Re, three terms: the error of f stays
 * below 1e-8, and the logarithm, which costs more than all the rest of a row, is saved.
 */
const SERIES_REACH = 0.01;

/** Solves Colebrook at a flow and keeps 1/√f with its derivatives, which follow from the equation itself. */
function visit(
  memory: FrictionMemory,
  item: number,
  rough: number,
  reynolds: number,
  flow: number,
  guess: number,
): void {
  const smooth = 2.51 / reynolds;
  const x = colebrookInverseRoot(rough, smooth, guess);
  const argument = rough + smooth * x;
  const pull = (TWO_OVER_LN10 * smooth) / argument;
  const first = (pull * x) / (1 + pull);
  const pullChange = pull * ((smooth * (x - first)) / argument - 1);
  memory.inverseFlow[item] = 1 / flow;
  memory.inverseRoot[item] = x;
  memory.first[item] = first;
  memory.second[item] = (pullChange * (x - first) + pull * first) / (1 + pull);
}

/** Loss and slope of every row, the run behind the blower included, at the flows in `work.flow`. */
export function evaluateRows(table: LossTable, work: FlowState['work']): void {
  const { quadratic, frictionStart, frictionScale, reynoldsScale, roughTerm, powerStart } = table;
  const { flow, loss, slope, memory } = work;
  const { inverseFlow, inverseRoot, first, second } = memory;
  const rows = quadratic.length;
  let item = 0;
  let powerItem = 0;
  for (let row = 0; row < rows; row++) {
    const q = flow[row]!;
    // Loss / flow, and the slope: both without a division by the flow.
    let ratio = quadratic[row]! * q;
    let tangent = 2 * ratio;
    for (const end = frictionStart[row + 1]!; item < end; item++) {
      const reynolds = reynoldsScale[item]! * q;
      const scale = frictionScale[item]!;
      if (reynolds >= TURBULENT_START) {
        const step = q * inverseFlow[item]! - 1;
        // ln(1 + step), and with it the series; far off it is only a guess for the full visit.
        let log = step * (1 - step * (0.5 - step * (1 / 3)));
        let x = inverseRoot[item]! + log * (first[item]! + 0.5 * second[item]! * log);
        if (!(step < SERIES_REACH && step > -SERIES_REACH)) {
          visit(memory, item, roughTerm[item]!, reynolds, q, step < 0.7 && step > -0.7 ? x : inverseRoot[item]!);
          log = 0;
          x = inverseRoot[item]!;
        }
        const root = 1 / x;
        const friction = scale * q * root * root;
        ratio += friction;
        tangent += 2 * friction * (1 - (first[item]! + second[item]! * log) * root);
      } else if (reynolds > LAMINAR_END) {
        const end = { logF: table.blendLogF[item]!, exponent: table.blendExponent[item]! };
        const { logF, exponent } = blendedFriction(reynolds, end);
        const friction = scale * q * Math.exp(logF);
        ratio += friction;
        tangent += friction * (2 + exponent);
      } else {
        const friction = (scale * 64) / reynoldsScale[item]!;
        ratio += friction;
        tangent += friction;
      }
    }
    for (const end = powerStart[row + 1]!; powerItem < end; powerItem++) {
      const exponent = table.powerExponent[powerItem]!;
      const power = table.powerCoefficient[powerItem]! * q ** (exponent - 1);
      ratio += power;
      tangent += exponent * power;
    }
    loss[row] = ratio * q;
    slope[row] = tangent;
  }
}
