import { siteAir, type Air } from './air/index.ts';
import { chartCurve } from './evidence/charts.ts';
import { outletArea } from './evidence/outlet-area.ts';
import { ratedPoint } from './evidence/rated-points.ts';
import { wheelSpeed } from './evidence/run-speed.ts';
import type { RunState } from './evidence/run-state.ts';
import { curveBand, drawFanCurves } from './fan/draws.ts';
import { estimateFan, type FanEvidence } from './fan/estimate.ts';
import { FAMILY } from './fan/families.ts';
import type { Warning } from './issues/result.ts';
import type { CurveRequest } from './job/check.ts';
import type { Blower, Ductwork, Supply } from './job/types.ts';
import { motorAtSite } from './motor/index.ts';
import type { Candidate } from './operate/candidate.ts';
import type { FanCurve } from './assessment.ts';
import { readingObservations } from './evidence/readings.ts';

/** From a blower's evidence to its curve with an honest band, at run speed and in site air. */

type Situation = { air: Air; supply: Supply; altitude_m: number | null; ambient_C: number | null; ductwork: Ductwork | null; drawCount: number; path: string };

/** Gathers all evidence of a blower, joins it into one curve, and draws possible true curves from it. */
export function candidateOf(blower: Blower, situation: Situation): Candidate {
  const { air, supply, path } = situation;
  const speed = wheelSpeed(blower, supply, path);
  const outlet = outletArea(blower, situation.ductwork, path);
  const motor = motorAtSite({ motor: blower.motor, drive: blower.drive, supply, altitude_m: situation.altitude_m, ambient_C: situation.ambient_C, path });
  const run: RunState = { speed_rpm: speed.speed_rpm, speedSd: speed.sd, airDensity_kg_m3: air.density_kg_m3 };
  const warnings: Warning[] = [...speed.warnings, ...outlet.warnings, ...motor.warnings];

  const evidence: FanEvidence = {
    charts: [],
    pressures: [],
    powers: [],
    family: FAMILY[blower.wheel.family],
    familyLevel: levelOfFamily(blower, run),
    outletArea_m2: outlet.area_m2,
    outletAreaSd: outlet.sd,
    speedSd: speed.sd,
    airDensity_kg_m3: air.density_kg_m3,
    motorPowerAtWheel_W: motor.ratedPower_W * motor.drive.value,
  };
  blower.evidence.forEach((e, i) => {
    const at = `${path}/evidence/${i}`;
    if (e.kind === 'chart') {
      const { curve, warnings: w } = chartCurve(e, run, at);
      evidence.charts.push(curve);
      warnings.push(...w);
    } else if (e.kind === 'rated-point') {
      const { pressure, power, warnings: w } = ratedPoint(e, run, at);
      evidence.pressures.push(pressure);
      if (power) evidence.powers.push(power);
      warnings.push(...w);
    } else if (e.kind === 'readings') {
      const { pressures, powers, warnings: w } = readingObservations(e, { blower, supply, run, siteAir: air, motor, path: at });
      evidence.pressures.push(...pressures);
      evidence.powers.push(...powers);
      warnings.push(...w);
    }
  });

  const estimate = estimateFan(evidence);
  const draws = estimate && drawFanCurves(estimate, situation.drawCount);
  return {
    blower,
    path,
    air,
    speed_rpm: speed.speed_rpm,
    outletArea_m2: outlet.area_m2,
    outletAreaGuessed: outlet.sd > 0 || outlet.area_m2 === null,
    motor,
    estimate,
    draws,
    band: estimate && draws && curveBand(estimate, draws),
    bestOnNet_Pa: estimate && draws && draws.flows_m3_s.map((q) => estimate.best.total_Pa(q)),
    warnings,
  };
}

/** Shut-off pressure and free flow that the family promises a wheel of this size and speed. */
function levelOfFamily(blower: Blower, run: RunState): FanEvidence['familyLevel'] {
  const { diameter_m: diameter, family } = blower.wheel;
  if (diameter == null || run.speed_rpm === null) return null;
  const tip_m_s = (Math.PI * diameter * run.speed_rpm) / 60;
  return {
    pressure_Pa: (FAMILY[family].psiShutOff.centre * run.airDensity_kg_m3 * tip_m_s ** 2) / 2,
    flow_m3_s: FAMILY[family].phiFree.centre * (Math.PI / 4) * diameter ** 2 * tip_m_s,
  };
}

const CURVE_DRAWS = 1024;
const NO_CURVE: FanCurve = { flow_m3_s: [], totalPressure_Pa: [], staticPressure_Pa: [], low95_Pa: [], high95_Pa: [], shaftPower_W: [], shaftPowerLow95_W: [], shaftPowerHigh95_W: [] };

/** The curve of one blower without any ducts: what `POST /api/curve` answers. */
export function curveOf({ site, supply, blower }: CurveRequest): { curve: FanCurve; warnings: Warning[] } {
  const { air, warnings } = siteAir(site);
  const candidate = candidateOf(blower, {
    air,
    supply: supply ?? {},
    altitude_m: site.altitude_m ?? null,
    ambient_C: site.airTemperature_C ?? null,
    ductwork: null,
    drawCount: CURVE_DRAWS,
    path: '/blower',
  });
  return { curve: candidate.band ?? NO_CURVE, warnings: [...warnings, ...candidate.warnings] };
}
