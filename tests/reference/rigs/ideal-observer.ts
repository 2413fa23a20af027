import type { Case } from '../../../src/assessment.ts';
import { siteAir } from '../../../src/air/index.ts';
import { gatherEvidence } from '../../../src/evidence/gather.ts';
import { drawFanCurves, curveBand } from '../../../src/fan/draws.ts';
import { estimateFan, type FanEvidence } from '../../../src/fan/estimate.ts';
import { FAMILY } from '../../../src/fan/families.ts';
import type { ErrorEffect } from '../../../src/fan/observation.ts';
import { EFFICIENCY } from '../../../src/fan/power-prior.ts';
import { ductDraws } from '../../../src/operate/duct-draws.ts';
import { judgeCase } from '../../../src/operate/judge-case.ts';
import { gatePlans } from '../../../src/operate/plans.ts';
import { canBeDrawn, drawnFan } from './drawn-fan.ts';
import type { Invented } from './invent.ts';
import { checked, type Quantity } from './judged.ts';
import { randomFrom } from './random.ts';
import { DRAWN_SHARE } from './invent.ts';
import type { ErrorSizes } from './true-rig.ts';
import { trueFan } from './true-fan.ts';
import { type TrueFamily } from './true-wheels.ts';

/**
 * The same program in the hands of somebody who knows what nobody can: how large each error of this rig truly is, which family the
 * wheel is of, and how the levels of the simulator's wheels are spread. A band much wider than this one's wastes what is known.
 */
const DRAWS = 1024;

type Level = { psi: number; psiSd: number; phi: number; phiSd: number; efficiency: number };
const levels = new Map<TrueFamily, Level>();

/** Levels of the simulator's own wheels, from two hundred of them. */
function levelOf(family: TrueFamily): Level {
  const known = levels.get(family);
  if (known) return known;
  const fans = Array.from({ length: 200 }, (_, i) => {
    const random = randomFrom(99, i);
    return canBeDrawn(family) && random.chance(DRAWN_SHARE) ? drawnFan(family, random) : trueFan(family, random);
  });
  const spread = (values: number[]) => {
    const ln = values.map(Math.log);
    const mean = ln.reduce((a, b) => a + b) / ln.length;
    return [Math.exp(mean), Math.sqrt(ln.reduce((s, v) => s + (v - mean) ** 2, 0) / ln.length)] as const;
  };
  const at = FAMILY[family].bestAt;
  const [psi, psiSd] = spread(fans.map((f) => f.psiStatic(0)));
  const [phi, phiSd] = spread(fans.map((f) => f.phiFree));
  const [efficiency] = spread(
    fans.map((f) => (at * f.phiFree * f.psiTotal(at * f.phiFree)) / f.lambda(at * f.phiFree)),
  );
  const level = { psi, psiSd, phi, phiSd, efficiency };
  levels.set(family, level);
  return level;
}

const SIZE_OF: readonly (readonly [RegExp, keyof ErrorSizes])[] = [
  [/flow-coefficient$/, 'flow'],
  [/manometer-scale$/, 'manometer'],
  [/(rig-air-density|pipe-diameter|rig-friction|open-end-loss)$/, 'workshop'],
  [/(clamp-meter|watt-meter)$/, 'electrical'],
];

function knowing(evidence: FanEvidence, find: Invented): FanEvidence {
  const { sizes, family } = find;
  const scaled = <T extends ErrorEffect>(e: T, by: number): T => ({
    ...e,
    flow_m3_s: e.flow_m3_s * by,
    value: e.value * by,
  });
  const factor = (error: string) => {
    const size = SIZE_OF.find(([name]) => name.test(error))?.[1];
    return size === undefined ? 1 : sizes[size];
  };
  const level = levelOf(family);
  const ours = FAMILY[find.familyGiven ? family : 'unknown'];
  return {
    ...evidence,
    family: {
      ...FAMILY[family],
      peakTotalEfficiency: level.efficiency / EFFICIENCY.ofPeak,
      psiShutOff: { centre: level.psi, lnSd: level.psiSd },
      phiFree: { centre: level.phi, lnSd: level.phiSd },
    },
    familyLevel: evidence.familyLevel && {
      pressure_Pa: (evidence.familyLevel.pressure_Pa * level.psi) / ours.psiShutOff.centre,
      flow_m3_s: (evidence.familyLevel.flow_m3_s * level.phi) / ours.phiFree.centre,
    },
    pressures: evidence.pressures.map((o) => ({
      ...o,
      shared: o.shared.map((e) => scaled(e, factor(e.error))),
      own: o.own.map((e) => scaled(e, e.flow_m3_s === 0 ? sizes.manometer : sizes.workshop)),
    })),
    powers: evidence.powers.map((o) => ({
      ...o,
      shared: o.shared.map((e) => scaled(e, factor(e.error))),
      own: o.own.map((e) => scaled(e, sizes.electrical)),
    })),
  };
}

/** Bands of the ideal observer, by plan. */
export function idealBands(find: Invented): Map<string, Record<Quantity, readonly [number, number]>> {
  return new Map(
    idealCases(find).flatMap(({ gatePlan, operatingPoint: point }) => {
      if (point === null) return [];
      const { flow_m3_s: flow, totalPressure_Pa: pressure, shaftPower_W: power } = point.interval95;
      return [[gatePlan, { flow, pressure, power: power! }] as const];
    }),
  );
}

/** What the ideal observer says of every plan, filters clean. */
export function idealCases(find: Invented): Case[] {
  const job = checked(find);
  const blower = job.blowers[0]!;
  const { air } = siteAir(job.site);
  const gathered = gatherEvidence(blower, {
    air,
    supply: job.supply,
    altitude_m: job.site.altitude_m ?? null,
    ambient_C: job.site.airTemperature_C ?? null,
    ductwork: job.ductwork,
    path: '/blowers/0',
  });
  const evidence = knowing(gathered.evidence, find);
  const estimate = estimateFan(evidence)!;
  const draws = drawFanCurves(estimate, DRAWS);
  const candidate = {
    blower,
    path: '/blowers/0',
    air,
    speed_rpm: gathered.speed_rpm,
    outletArea_m2: evidence.outletArea_m2,
    outletAreaGuessed: !find.outletAreaGiven,
    motor: gathered.motor,
    estimate,
    draws,
    band: curveBand(estimate, draws),
    bestOnNet_Pa: draws.flows_m3_s.map((q) => estimate.best.total_Pa(q)),
    warnings: [],
  };
  const context = {
    ductwork: job.ductwork,
    material: job.material,
    confidence: 0.95,
    loadAtMost: 0.9,
    ductDraws: ductDraws(DRAWS, job.ductwork.sections.length),
  };
  return gatePlans(job).plans.map((plan) => judgeCase(context, candidate, plan, 'clean').result);
}
