import type { Network } from './network.ts';
import { emptyMemory, type FrictionMemory } from './friction-memory.ts';

/**
 * A solved (or about to be solved) flow of one network: results by section, and the work space of the solver. It is the
 * warm start of the next solve and is overwritten by it; nothing is allocated while solving.
 */
export type FlowState = {
  readonly network: Network;

  /** flow through the blower [m3/s] */
  totalFlow_m3_s: number;
  /** total pressure below the room at the blower's inlet [Pa], ≥ 0 */
  suction_Pa: number;
  /** d suction / d total flow [Pa/(m3/s)] */
  suctionSlope: number;
  /** loss of the run behind the blower [Pa], and its slope [Pa/(m3/s)] */
  dischargeLoss_Pa: number;
  dischargeSlope: number;
  /** passes over the tree */
  iterations: number;
  /** largest relative change of any flow in the last pass [-]; the error left is about its square */
  residual: number;
  /** false until something was solved, and when the solver gave up (which no valid tree should bring about) */
  solved: boolean;

  /** by section in the job's order: flow [m3/s], own loss [Pa], and suction at its start and end [Pa] */
  readonly sectionFlow_m3_s: Float64Array;
  readonly sectionLoss_Pa: Float64Array;
  readonly startSuction_Pa: Float64Array;
  readonly endSuction_Pa: Float64Array;

  /** work space by active row; the extra last row is the blower and the run behind it */
  readonly work: {
    readonly flow: Float64Array;
    readonly next: Float64Array;
    readonly loss: Float64Array;
    readonly slope: Float64Array;
    /** flow of a row = yielding · suction at its end − pull, everything upstream included */
    readonly yielding: Float64Array;
    readonly pull: Float64Array;
    /** sums of yielding and pull over what flows into the row, and 1/admittance */
    readonly admittance: Float64Array;
    readonly drive: Float64Array;
    readonly stiffness: Float64Array;
    readonly startSuction: Float64Array;
    /** friction factors of the last visits */
    readonly memory: FrictionMemory;
  };
};

/** An empty state for a network: a cold start. */
export function createState(network: Network): FlowState {
  const rows = network.activeCount + 1;
  const sections = network.sections.length;
  return {
    network,
    totalFlow_m3_s: 0,
    suction_Pa: 0,
    suctionSlope: 0,
    dischargeLoss_Pa: 0,
    dischargeSlope: 0,
    iterations: 0,
    residual: 0,
    solved: false,
    sectionFlow_m3_s: new Float64Array(sections),
    sectionLoss_Pa: new Float64Array(sections),
    startSuction_Pa: new Float64Array(sections),
    endSuction_Pa: new Float64Array(sections),
    work: {
      flow: new Float64Array(rows),
      next: new Float64Array(rows),
      loss: new Float64Array(rows),
      slope: new Float64Array(rows),
      yielding: new Float64Array(rows),
      pull: new Float64Array(rows),
      admittance: new Float64Array(rows),
      drive: new Float64Array(rows),
      stiffness: new Float64Array(rows),
      startSuction: new Float64Array(rows),
      memory: emptyMemory(network.losses.frictionScale.length),
    },
  };
}

/** Loss of the whole system at the solved flow: suction side and way out [Pa]. */
export const totalLoss_Pa = (state: FlowState): number => state.suction_Pa + state.dischargeLoss_Pa;

/** Slope of the whole system's loss at the solved flow [Pa/(m3/s)]. */
export const totalSlope = (state: FlowState): number => state.suctionSlope + state.dischargeSlope;
