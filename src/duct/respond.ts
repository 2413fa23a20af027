import { colebrookInverseRoot, colebrookRoughnessExponent, LAMINAR_END, TURBULENT_START } from '../pipe/index.ts';
import type { Air } from '../air/air.ts';
import { circleArea_m2, DOUBT_KINDS, type LossTerm } from './elements/element.ts';
import { totalLoss_Pa, type FlowState } from './flow-state.ts';
import { termLoss_Pa } from './term-loss.ts';

/**
 * How a solved system answers to errors in its losses, to first order.
 *
 * An error multiplies a loss by exp(sd·z), z a standard normal deviate; half of the variance is shared by all elements of a
 * kind, half is the element's own. What is linear here is the logarithm: δ ln(total loss) is the loss-weighted sum of the
 * errors, each branch weighted with the share of a small change of flow that it would take (its admittance among its
 * neighbours). One sweep up the tree carries the errors to the blower, one down brings the changes of flow.
 * When all losses err by the same factor the answer is exact: the total takes the factor and no flow moves.
 */
export type Response = {
  /** d ln(section's flow) / d ln(flow through the blower) [-], by section in the job's order; 0 where no air moves */
  readonly flowPerFanFlow: Float64Array;
  /**
   * One draw, at the same flow through the blower. Nothing is allocated.
   * @param kindDeviates    standard normal deviates, one per entry of `DOUBT_KINDS`
   * @param sectionDeviates one per section in the job's order, and one more for the run behind the blower
   * @param lnFlow          filled with δ ln(flow) of every section [-]
   * @returns δ ln(total loss of suction side and way out) [-]
   */
  draw(kindDeviates: Float64Array, sectionDeviates: Float64Array, lnFlow: Float64Array): number;
};

/** d ln(loss) / d ln(the uncertain quantity) [-]: 1, but for friction the exponent of roughness, which fades as pipes get smooth. */
function leverage(term: LossTerm, flow_m3_s: number, air: Air): number {
  if (term.law !== 'friction') return 1;
  const reynolds =
    (air.density_kg_m3 * flow_m3_s * term.diameter_m) / (circleArea_m2(term.diameter_m) * air.viscosity_Pa_s);
  if (reynolds <= LAMINAR_END) return 0;
  const rough = term.roughness_m / term.diameter_m / 3.7;
  const smooth = 2.51 / Math.max(reynolds, TURBULENT_START);
  const turbulent = colebrookRoughnessExponent(rough, smooth, colebrookInverseRoot(rough, smooth, 7));
  const t = Math.log(Math.min(reynolds, TURBULENT_START) / LAMINAR_END) / Math.log(TURBULENT_START / LAMINAR_END);
  return turbulent * t * t * (3 - 2 * t);
}

/** Errors of one row [Pa per unit deviate]: shared ones by kind, and all its own ones in one. */
type RowDoubt = { kinds: Map<number, number>; own: number };

function rowDoubt(terms: readonly { term: LossTerm }[], flow_m3_s: number, air: Air): RowDoubt {
  const kinds = new Map<number, number>();
  let ownVariance = 0;
  for (const { term } of terms) {
    const sd_Pa = Math.SQRT1_2 * term.doubt.sd * leverage(term, flow_m3_s, air) * termLoss_Pa(term, flow_m3_s, air);
    if (sd_Pa === 0) continue;
    const kind = DOUBT_KINDS.indexOf(term.doubt.kind);
    kinds.set(kind, (kinds.get(kind) ?? 0) + sd_Pa);
    ownVariance += sd_Pa * sd_Pa;
  }
  return { kinds, own: Math.sqrt(ownVariance) };
}

/**
 * Prepares the linear response around a solved state; the state may be used for other solves afterwards.
 * Cost: linear in the number of elements, once; each draw is linear in the number of sections.
 */
export function respond(state: FlowState): Response {
  const { network, work, totalFlow_m3_s } = state;
  const { activeCount: rows, sections, sectionOf, air } = network;
  const flowPerFanFlow = new Float64Array(sections.length);
  if (!state.solved || totalFlow_m3_s === 0) {
    return { flowPerFanFlow, draw: (_kinds, _own, lnFlow) => (lnFlow.fill(0), 0) };
  }
  const { parent, leaf } = network;
  const flow = Float64Array.from(work.flow);
  const admittance = Float64Array.from(work.yielding);
  const share = Float64Array.from(parent, (into, row) => admittance[row]! / work.admittance[into]!);
  const stiffnessAtStart = Float64Array.from(leaf, (isLeaf, row) => (isLeaf === 1 ? 0 : work.stiffness[row]!));

  const doubts = Array.from({ length: rows + 1 }, (_, row) =>
    rowDoubt(network.terms[row < rows ? sectionOf[row]! : sections.length]!, flow[row]!, air),
  );
  const kindStart = new Int32Array(rows + 2);
  doubts.forEach(({ kinds }, row) => (kindStart[row + 1] = kindStart[row]! + kinds.size));
  const kindOf = Int32Array.from(doubts.flatMap(({ kinds }) => [...kinds.keys()]));
  const kindWeight = Float64Array.from(doubts.flatMap(({ kinds }) => [...kinds.values()]));
  const ownWeight = Float64Array.from(doubts, ({ own }) => own);

  const change = new Float64Array(rows + 1);
  change[rows] = totalFlow_m3_s;
  for (let row = rows - 1; row >= 0; row--) {
    change[row] = share[row]! * change[parent[row]!]!;
    flowPerFanFlow[sectionOf[row]!] = change[row]! / flow[row]!;
  }

  const atEnd = new Float64Array(rows + 1);
  const atStart = new Float64Array(rows + 1);
  const total = totalLoss_Pa(state);

  const draw = (kindDeviates: Float64Array, sectionDeviates: Float64Array, lnFlow: Float64Array): number => {
    atStart.fill(0);
    for (let row = 0; row <= rows; row++) {
      const section = row < rows ? sectionOf[row]! : sections.length;
      let error = ownWeight[row]! * sectionDeviates[section]!;
      for (let i = kindStart[row]!; i < kindStart[row + 1]!; i++) error += kindWeight[i]! * kindDeviates[kindOf[i]!]!;
      if (row === rows) {
        atEnd[row] = error;
        break;
      }
      atEnd[row] = error + atStart[row]!;
      atStart[parent[row]!]! += share[row]! * atEnd[row]!;
    }
    // At a junction: suction change = what the errors bring + stiffness upstream × change of the flow that leaves it.
    lnFlow.fill(0);
    change[rows] = 0;
    for (let row = rows - 1; row >= 0; row--) {
      const into = parent[row]!;
      const junction = into === rows ? atStart[rows]! : atStart[into]! + stiffnessAtStart[into]! * change[into]!;
      change[row] = (junction - atEnd[row]!) * admittance[row]!;
      lnFlow[sectionOf[row]!] = change[row]! / flow[row]!;
    }
    return total > 0 ? (atStart[rows]! + atEnd[rows]!) / total : 0;
  };
  return { flowPerFanFlow, draw };
}
