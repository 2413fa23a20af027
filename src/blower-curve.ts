import { pressureAltitude, siteAir } from './air/index.ts';
import type { FanCurve } from './assessment.ts';
import { findBlunders } from './evidence/blunders.ts';
import { gatherEvidence, type Place } from './evidence/gather.ts';
import { curveBand, drawFanCurves } from './fan/draws.ts';
import { estimateFan } from './fan/estimate.ts';
import type { Warning } from './issues/result.ts';
import type { CurveRequest } from './job/check.ts';
import type { Blower } from './job/types.ts';
import type { Candidate } from './operate/candidate.ts';
import { NO_CURVE } from './operate/without-point.ts';

/**
 * From a blower's evidence to its curve with an honest band, at run speed and in site air.
 * @param drawCount possible true curves to draw
 */
export function candidateOf(blower: Blower, place: Place, drawCount: number): Candidate {
  const { evidence, speed_rpm, motor, warnings } = gatherEvidence(blower, place);
  const estimate = estimateFan(evidence);
  const draws = estimate && drawFanCurves(estimate, drawCount);
  return {
    blower,
    path: place.path,
    air: place.air,
    speed_rpm,
    outletArea_m2: evidence.outletArea_m2,
    outletAreaGuessed: evidence.outletAreaSd > 0 || evidence.outletArea_m2 === null,
    motor,
    estimate,
    draws,
    band: estimate && draws && curveBand(estimate, draws),
    bestOnNet_Pa: estimate && draws && draws.flows_m3_s.map((q) => estimate.best.total_Pa(q)),
    warnings,
  };
}

/** Where a blower stands, by its site and mains alone. */
export function placeWithoutDucts({ site, supply }: Pick<CurveRequest, 'site' | 'supply'>) {
  const { air, warnings } = siteAir(site);
  const place: Place = {
    air,
    supply: supply ?? {},
    altitude_m: site.altitude_m ?? pressureAltitude(air.pressure_Pa),
    ambient_C: site.airTemperature_C ?? null,
    ductwork: null,
    path: '/blower',
  };
  return { place, warnings };
}

const CURVE_DRAWS = 1024;

/** The curve of one blower without any ducts: what `POST /api/curve` answers. Empty where nothing gives a curve. */
export function curveOf({ site, supply, blower }: CurveRequest): { curve: FanCurve; warnings: Warning[] } {
  const { place, warnings } = placeWithoutDucts({ site, supply });
  const candidate = candidateOf(blower, place, CURVE_DRAWS);
  const blunders = candidate.estimate ? findBlunders(blower, place, candidate.estimate) : [];
  return { curve: candidate.band ?? NO_CURVE, warnings: [...warnings, ...candidate.warnings, ...blunders] };
}
