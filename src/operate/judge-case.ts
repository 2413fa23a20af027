import type { Case, OperatingPoint } from '../assessment.ts';
import {
  lowestVelocity_m_s,
  pressureBudget,
  respond,
  transportOf,
  type FilterState,
  type Material,
  type Transport,
} from '../duct/index.ts';
import { loadAt } from '../motor/index.ts';
import { interval95 } from '../numeric/quantile.ts';
import { caseChances, type Chances, type FlowLimit } from './chances.ts';
import type { Candidate } from './candidate.ts';
import { shareThatMeets } from './net.ts';
import type { DuctDraws } from './duct-draws.ts';
import { operatingPoints, type Point, type Points } from './operating-points.ts';
import type { Plan } from './plans.ts';
import { caseReasons } from './case-reasons.ts';
import { systemCurve, systemOf, type SystemCurve } from './system.ts';
import { verdictOf } from './verdict.ts';
import { withoutPoint } from './without-point.ts';
import type { Ductwork } from '../job/types.ts';

/** What every case of a job shares. */
export type JudgeContext = {
  ductwork: Ductwork;
  material: Material;
  confidence: number;
  /** largest motor load fraction allowed */
  loadAtMost: number;
  ductDraws: DuctDraws;
};

/** A judged case with what the blower's own verdict still needs from it. */
export type JudgedCase = {
  result: Case;
  points: Points | null;
  chances: Chances | null;
  keepsLoad: number;
  outside: boolean;
  /** the draws again, with the margin of every limit kept: what a measurement could tell is read from them */
  withMargins: (() => Chances) | null;
};

/** A limit on a flow that stands for a machine's need or a pipe's lowest speed. */
type NamedLimit = FlowLimit & { of: 'machine' | 'pipe'; index: number };

/** One blower, one way the gates stand, filters clean or loaded: where it runs, what everyone gets, and whether that is enough. */
export function judgeCase(
  context: JudgeContext,
  candidate: Candidate,
  plan: Plan,
  filterState: FilterState,
): JudgedCase {
  const { ductwork, confidence } = context;
  const { air, estimate, draws, outletArea_m2 } = candidate;
  const system = systemOf(ductwork, { air, open: plan.open, filterState, outletArea_m2 });
  const transport = transportOf(system.network, context.material);
  const frame = { blowerId: candidate.blower.id, gatePlan: plan.name, required: plan.required, filterState };

  if (estimate === null || draws === null)
    return pointless(withoutPoint(frame, ductwork, transport, plan, 'outside-evidence'));
  const curve = systemCurve(system, draws.flows_m3_s);
  const points = operatingPoints(estimate, system, curve);
  const drawn = {
    fanCurve: candidate.band!,
    systemCurve: visible(curve, candidate.band!.totalPressure_Pa),
  };
  const at = points.least;
  if (at === null) {
    const none = withoutPoint(
      frame,
      ductwork,
      transport,
      plan,
      points.all.length > 0
        ? 'unstable'
        : shareThatMeets(draws, curve.loss_Pa) > 1 - confidence
          ? 'outside-evidence'
          : 'no-operating-point',
    );
    return pointless({ ...none, ...drawn, otherOperatingPoints: points.all.map((p) => plainPoint(p, candidate)) });
  }

  const limits = namedLimits(context, transport, plan);
  const response = respond(at.state);
  const pickups = ductwork.sections.flatMap((s, i) => (s.pickup ? [i] : []));
  const openPickups = pickups.filter((i) => system.network.open[i] === 1);
  const run = (withMargins: boolean) =>
    caseChances(
      draws,
      {
        loss_Pa: curve.loss_Pa,
        respond: (d, lnFlow) => response.draw(context.ductDraws.kinds[d]!, context.ductDraws.sections[d]!, lnFlow),
        sections: ductwork.sections.length,
        sectionFlow_m3_s: at.state.sectionFlow_m3_s,
        elasticity: response.flowPerFanFlow,
        bareOutlet: (ductwork.discharge ?? []).length === 0,
      },
      { flow_m3_s: at.flow_m3_s, bestTotal_Pa: candidate.bestOnNet_Pa! },
      limits,
      openPickups,
      {
        driveEfficiency: candidate.motor.drive,
        capacity_W: candidate.motor.ratedPower_W * candidate.motor.serviceFactor,
        capacitySd: candidate.motor.ratedPowerDoubt,
        loadAtMost: context.loadAtMost,
      },
      withMargins,
    );
  const chances = run(false);
  const load = loadAt(candidate.motor, points.heaviest!.shaftPower_W);
  const outside = isOutsideEvidence(candidate, at);
  const honest = verdictOf(chances.keepsAll, confidence);
  const chanceOf = (of: NamedLimit['of'], index: number) => {
    const i = limits.findIndex((l) => l.of === of && l.index === index);
    return i < 0 ? 1 : chances.keeps[i]!;
  };

  const result: Case = {
    ...frame,
    operatingPoint: {
      ...plainPoint(at, candidate),
      interval95: {
        flow_m3_s: interval95(chances.flow_m3_s, at.flow_m3_s),
        totalPressure_Pa: interval95(chances.total_Pa, at.total_Pa),
        shaftPower_W: interval95(chances.shaftPower_W, at.shaftPower_W),
      },
    },
    otherOperatingPoints: points.all.filter((p) => p !== at).map((p) => plainPoint(p, candidate)),
    ...drawn,
    sections: ductwork.sections.map((s, i) => {
      const run = transport.sections[i]!;
      const flow = at.state.sectionFlow_m3_s[i]!;
      const velocity = lowestVelocity_m_s(run, flow);
      return {
        id: s.id,
        flow_m3_s: flow,
        velocity_m_s: velocity,
        minimumVelocity_m_s: run.minimumVelocity_m_s,
        ok: !run.judged || velocity === null || velocity >= (run.minimumVelocity_m_s ?? 0),
        pressureDrop_Pa: at.state.sectionLoss_Pa[i]!,
        judged: run.judged,
      };
    }),
    discharge: dischargeOf(transport, at.flow_m3_s),
    pickups: pickups.map((i) => {
      const { id, pickup } = ductwork.sections[i]!;
      const open = system.network.open[i] === 1;
      const flow = at.state.sectionFlow_m3_s[i]!;
      const required = pickup?.requiredFlow_m3_s ?? null;
      return {
        id,
        open,
        flow_m3_s: flow,
        requiredFlow_m3_s: required,
        ok: !open || required === null || flow >= required,
        probability: open ? chanceOf('machine', i) : 1,
        flow95_m3_s: open ? interval95(chances.watched[openPickups.indexOf(i)]!, flow) : [flow, flow],
      };
    }),
    motor: {
      shaftPower_W: load.shaftPower_W,
      loadFraction: load.loadFraction,
      margin: load.margin,
      current_A: load.current_A,
      currentAtLowestVoltage_A: load.currentAtLowestVoltage_A,
      worstCase: null,
      probabilityWithinRating: withinRating(chances.load),
    },
    budget: pressureBudget(at.state)?.parts ?? [],
    verdict: outside && honest === 'yes' ? 'unsure' : honest,
    probability: chances.keepsAll,
    reasons: [],
  };
  result.reasons = caseReasons({
    result,
    machines: new Map(ductwork.sections.map((s) => [s.id, s.pickup?.machine ?? s.id])),
    sectionChance: (i) => chanceOf('pipe', i),
    dischargeChance: chanceOf('pipe', -1),
    keepsLoad: chances.keepsLoad,
    confidence,
    loadAtMost: context.loadAtMost,
    points: points.all,
    outside,
    powerUnknown: estimate.powerSource === 'family',
    outletAreaUnknown: candidate.outletAreaGuessed,
    dustThroughWheel: transport.dustThroughWheel,
    pressureShare: at.total_Pa / air.pressure_Pa,
  });
  return { result, points, chances, keepsLoad: chances.keepsLoad, outside, withMargins: () => run(true) };
}

/** Flows that must be reached in this plan: what open machines need, and what keeps dust moving in the pipes it runs through. */
function namedLimits({ ductwork }: JudgeContext, transport: Transport, plan: Plan): NamedLimit[] {
  const limits: NamedLimit[] = [];
  ductwork.sections.forEach(({ id, pickup }, i) => {
    if (pickup?.requiredFlow_m3_s && plan.open.has(id))
      limits.push({ of: 'machine', index: i, section: i, least_m3_s: pickup.requiredFlow_m3_s });
    const run = transport.sections[i]!;
    if (run.judged && run.minimumVelocity_m_s && run.area_m2 !== null)
      limits.push({ of: 'pipe', index: i, section: i, least_m3_s: run.minimumVelocity_m_s * run.area_m2 });
  });
  const { discharge } = transport;
  if (discharge.judged && discharge.minimumVelocity_m_s && discharge.area_m2 !== null)
    limits.push({
      of: 'pipe',
      index: -1,
      section: null,
      least_m3_s: discharge.minimumVelocity_m_s * discharge.area_m2,
    });
  return limits;
}

function dischargeOf({ discharge }: Transport, flow_m3_s: number): Case['discharge'] {
  const velocity = lowestVelocity_m_s(discharge, flow_m3_s);
  const minimum = discharge.judged ? discharge.minimumVelocity_m_s : null;
  return {
    velocity_m_s: velocity,
    minimumVelocity_m_s: minimum,
    ok: velocity === null || minimum === null || velocity >= minimum,
  };
}

function plainPoint(p: Point, { speed_rpm }: Candidate): OperatingPoint {
  return {
    flow_m3_s: p.flow_m3_s,
    totalPressure_Pa: p.total_Pa,
    staticPressure_Pa: p.static_Pa,
    shaftPower_W: p.shaftPower_W,
    efficiency: p.shaftPower_W > 0 ? (p.flow_m3_s * p.total_Pa) / p.shaftPower_W : null,
    speed_rpm,
    stable: p.stable,
    interval95: {
      flow_m3_s: [p.flow_m3_s, p.flow_m3_s],
      totalPressure_Pa: [p.total_Pa, p.total_Pa],
      shaftPower_W: [p.shaftPower_W, p.shaftPower_W],
    },
  };
}

/** The band is mostly prior where its standard deviation is above half of what the family alone would give. */
const MOSTLY_PRIOR = 0.5;

function isOutsideEvidence({ estimate, draws }: Candidate, at: Point): boolean {
  const { flows_m3_s: flows, total_Pa, count } = draws!;
  const width = flows.length;
  const i = Math.min(width - 1, Math.round((at.flow_m3_s / flows[width - 1]!) * (width - 1)));
  const best = estimate!.best.total_Pa(flows[i]!);
  let square = 0;
  for (let d = 0; d < count; d++) square += (total_Pa[d * width + i]! - best) ** 2;
  return Math.sqrt(square / count) > MOSTLY_PRIOR * estimate!.familyOnlyDeviation_Pa(flows[i]!);
}

const withinRating = (load: Float64Array): number => load.reduce((n, x) => n + (x <= 1 ? 1 : 0), 0) / load.length;

/** Points of a drawn system curve. */
const DRAWN_POINTS = 40;

/** The part of the system curve worth drawing: up to a third above the fan's highest pressure, in even steps of flow. */
function visible(curve: SystemCurve, fan: readonly number[]): Case['systemCurve'] {
  const most = 1.33 * Math.max(...fan);
  const { flows_m3_s: flows, loss_Pa: loss } = curve;
  let end = 0;
  while (end < flows.length - 1 && loss[end]! <= most) end++;
  if (!Number.isFinite(loss[end]!)) return { flow_m3_s: [0], totalPressure_Pa: [0] };
  const drawn = Array.from({ length: DRAWN_POINTS + 1 }, (_, i) => (i / DRAWN_POINTS) * flows[end]!);
  const pressures = drawn.map(curve.value_Pa);
  const beyond = pressures.findIndex((p) => p > most);
  const shown = beyond < 0 ? drawn.length : beyond + 1;
  return { flow_m3_s: drawn.slice(0, shown), totalPressure_Pa: pressures.slice(0, shown) };
}

const pointless = (result: Case): JudgedCase => ({
  result,
  points: null,
  chances: null,
  keepsLoad: result.probability,
  outside: true,
  withMargins: null,
});
