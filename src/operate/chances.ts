import type { FanDraws } from '../fan/draws.ts';
import { crossingOnNet, onTheNet } from './net.ts';

/** The system of one case on the net of the fan draws, with its response to doubts. */
export type SystemOnNet = {
  /** total-pressure loss [Pa] at each flow of the net */
  loss_Pa: Float64Array;
  /**
   * The system's answer to draw d: fills ln change of each section's flow at equal fan flow, returns ln change of the loss.
   */
  respond(draw: number, lnSectionFlow: Float64Array): number;
  sections: number;
  /** nominal flow of each section [m3/s] and its elasticity d ln(section flow) / d ln(fan flow) */
  sectionFlow_m3_s: Float64Array;
  elasticity: Float64Array;
  /** nothing behind the blower: the velocity pressure in its outlet is lost, and part of `loss_Pa` with the best guess of its area */
  bareOutlet: boolean;
};

/** A flow that must be reached: of one section, or of the whole blower where `section` is null. */
export type FlowLimit = { section: number | null; least_m3_s: number };

export type MotorLimit = {
  /** best value and standard deviation of the drive's efficiency */
  driveEfficiency: { value: number; sd: number };
  /** rated power × service factor [W], and the largest load fraction allowed */
  capacity_W: number;
  /** doubt of the rated power, one relative standard deviation [-]: of plates that give watts drawn */
  capacitySd: number;
  loadAtMost: number;
};

export type Chances = {
  /** samples over the draws at the least-flow stable point */
  flow_m3_s: Float64Array;
  total_Pa: Float64Array;
  shaftPower_W: Float64Array;
  /** motor load fraction at the stable point of highest power */
  load: Float64Array;
  /** flow of each watched section over the draws, in the order asked */
  watched: Float64Array[];
  /** ln(flow / limit) of each flow limit over the draws; empty unless asked for */
  margins: Float64Array[];
  /** ln change of the ducts' loss at equal flow; empty unless asked for */
  lnLoss: Float64Array;
  /** share of draws that keep each limit, the motor limit, and everything at once */
  keeps: number[];
  keepsLoad: number;
  keepsAll: number;
};

/**
 * Runs the joint draws of fan, ducts and drive through one case and counts what holds (JCGM 106: the chance of conforming).
 * @param nominal the deterministic operating point: the net's small interpolation error is taken out by it
 * @param watch   sections whose flow is wanted as a sample
 * @param withMargins also keep by how much each flow limit is missed or met in every draw
 */
export function caseChances(
  draws: FanDraws,
  system: SystemOnNet,
  nominal: { flow_m3_s: number; bestTotal_Pa: Float64Array },
  limits: readonly FlowLimit[],
  watch: readonly number[],
  motor: MotorLimit,
  withMargins = false,
): Chances {
  const { count, flows_m3_s: flows } = draws;
  const width = flows.length;
  const out: Chances = {
    flow_m3_s: new Float64Array(count),
    total_Pa: new Float64Array(count),
    shaftPower_W: new Float64Array(count),
    load: new Float64Array(count),
    watched: watch.map(() => new Float64Array(count)),
    lnLoss: new Float64Array(withMargins ? count : 0),
    margins: withMargins ? limits.map(() => new Float64Array(count)) : [],
    keeps: limits.map(() => 0),
    keepsLoad: 0,
    keepsAll: 0,
  };
  const onNet = crossingOnNet(flows, nominal.bestTotal_Pa, 0, system.loss_Pa, 1).least;
  const correction = onNet > 0 && nominal.flow_m3_s > 0 ? nominal.flow_m3_s / onNet : 1;
  const lnFlow = new Float64Array(system.sections);
  const met = new Float64Array(system.bareOutlet ? width : 0);

  for (let d = 0; d < count; d++) {
    const lnLoss = system.respond(d, lnFlow);
    if (withMargins) out.lnLoss[d] = lnLoss;
    // a bare outlet loses what its own area makes of the flow: the doubt about that area is in fan and ducts alike
    if (system.bareOutlet)
      for (let i = 0; i < width; i++)
        met[i] = draws.total_Pa[d * width + i]! - draws.outletExcess[d]! * flows[i]! * flows[i]!;
    const at = system.bareOutlet
      ? crossingOnNet(flows, met, 0, system.loss_Pa, Math.exp(lnLoss))
      : crossingOnNet(flows, draws.total_Pa, d * width, system.loss_Pa, Math.exp(lnLoss));
    const flow = at.least * correction;
    out.flow_m3_s[d] = flow;
    out.total_Pa[d] = onTheNet(flows, draws.total_Pa, d * width, flow);
    const power = onTheNet(flows, draws.shaftPower_W, d * width, flow);
    out.shaftPower_W[d] = power;

    const lnRatio = nominal.flow_m3_s > 0 ? Math.log(Math.max(flow, 1e-12) / nominal.flow_m3_s) : 0;
    for (let i = 0; i < watch.length; i++) out.watched[i]![d] = sectionFlow(system, watch[i]!, lnRatio, lnFlow);
    let flowsKept = true;
    for (let i = 0; i < limits.length; i++) {
      const { section, least_m3_s } = limits[i]!;
      const reached = section === null ? flow : sectionFlow(system, section, lnRatio, lnFlow);
      if (reached >= least_m3_s) out.keeps[i]!++;
      else flowsKept = false;
      if (withMargins) out.margins[i]![d] = Math.log(Math.max(reached, 1e-12) / least_m3_s);
    }
    let highest = power;
    for (const q of at.others)
      highest = Math.max(highest, onTheNet(flows, draws.shaftPower_W, d * width, q * correction));
    const efficiency = Math.min(1, motor.driveEfficiency.value + motor.driveEfficiency.sd * draws.driveDeviate[d]!);
    const capacity_W = motor.capacity_W * Math.exp(motor.capacitySd * draws.motorDeviate[d]!);
    out.load[d] = highest / efficiency / capacity_W;
    const loadKept = out.load[d]! <= motor.loadAtMost;
    if (loadKept) out.keepsLoad++;
    if (flowsKept && loadKept) out.keepsAll++;
  }
  out.keeps = out.keeps.map((n) => n / count);
  out.keepsLoad /= count;
  out.keepsAll /= count;
  return out;
}

/** Flow of a section in a draw, from its nominal flow, the change of the whole flow and the answer of the ducts [m3/s]. */
const sectionFlow = (system: SystemOnNet, section: number, lnRatio: number, lnFlow: Float64Array): number =>
  system.sectionFlow_m3_s[section]! * Math.exp(system.elasticity[section]! * lnRatio + lnFlow[section]!);
