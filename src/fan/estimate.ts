import { baseFromChart, baseFromFamily, type BaseCurve } from './base-curve.ts';
import type { FamilyShape } from './families.ts';
import { fitCurve, type Posterior } from './fit.ts';
import { asObservations, leadingChart, SHAPE_SHARE, type ChartCurve } from './leading-chart.ts';
import { CURVE_UNKNOWNS, curveModel, type CurveAt, type CurveModel, type ModelSpread } from './model.ts';
import type { PowerObservation, PressureObservation } from './observation.ts';
import { EFFICIENCY, likelyEfficiency, motorSizeHint, POWER_SHAPE } from './power-prior.ts';
import { reachHint } from './reach-prior.ts';
import { slipIn } from './slip.ts';
import { scannedStarts } from './start.ts';
import { shapePreservingCubic } from '../numeric/interpolate.ts';

export type { ChartCurve } from './leading-chart.ts';

/** What is known of a blower, all at run speed and in site air. */
export type FanEvidence = {
  charts: ChartCurve[];
  pressures: PressureObservation[];
  powers: PowerObservation[];
  family: FamilyShape;
  /** shut-off pressure and free flow the family would give a wheel of this size and speed; null without size or speed */
  familyLevel: { pressure_Pa: number; flow_m3_s: number } | null;
  outletArea_m2: number | null;
  /** standard deviation of ln(outlet area) and of ln(run speed) */
  outletAreaSd: number;
  speedSd: number;
  airDensity_kg_m3: number;
  /** rated shaft power of its own motor after the drive, for a rough idea of the load; null when another motor turned it */
  motorPowerAtWheel_W: number | null;
  /** greatest flow of a test of several rows [m3/s]; null where nobody opened it step by step */
  testedUpTo_m3_s: number | null;
};

export type PowerSource = 'chart' | 'measured' | 'family';

export type FanEstimate = {
  model: CurveModel;
  posterior: Posterior;
  best: CurveAt;
  powerSource: PowerSource;
  /** flows at which the curve may bend [m3/s], rising, from 0 to beyond free delivery */
  knots_m3_s: number[];
  /** standard deviation of total pressure [Pa] at a flow, were nothing known but the family */
  familyOnlyDeviation_Pa(flow_m3_s: number): number;
  /** the same without the one reading that contradicts all others: until somebody looks, the truth may lie near either; null without such */
  withoutSlip: FanEstimate | null;
};

/**
 * How far wear may have bent the printed power of a blower that somebody then measured, in ln: without it amps at several loads are
 * believed to show the motor through a shape that nobody measured. A chart alone keeps the limits of its grade. Estimated.
 */
const USED_POWER = { tilt: 0.06, wave: 0.03 };
/** Without a size the level comes from the readings alone. */
const LEVEL_FROM_READINGS_SD = { pressure: 0.7, flow: 1 };
/** Readings that never rise above these show no blower. */
const LEAST_LEVEL = { pressure_Pa: 0.1, flow_m3_s: 1e-4 };

/**
 * Joins all evidence into one curve with its doubt; null where neither evidence nor the wheel's size gives a level.
 * @param lopsided see `fitCurve`; for mere comparisons a slip is not looked for either
 * @param near     the curve's own unknowns of a fit that must lie close by, to start from there alone; null looks everywhere
 */
export function estimateFan(
  evidence: FanEvidence,
  lopsided = true,
  near: Float64Array | null = null,
): FanEstimate | null {
  const asRead = estimateAsRead(evidence, lopsided, near);
  if (asRead === null || !lopsided) return asRead;
  const restFits = (path: string) => estimateAsRead(without(evidence, path), false, null)?.posterior ?? null;
  const slip = slipIn(asRead.posterior.checks, restFits);
  return slip === null ? asRead : { ...asRead, withoutSlip: estimateAsRead(without(evidence, slip), true, null) };
}

/** The evidence less what stands at one place of it. */
function without(evidence: FanEvidence, path: string): FanEvidence {
  const kept = (o: { path: string }) => o.path !== path;
  const pressures = evidence.pressures.filter(kept);
  const furthest_m3_s = Math.max(0, ...pressures.map((o) => o.flow_m3_s));
  const { testedUpTo_m3_s: tested_m3_s } = evidence;
  return {
    ...evidence,
    pressures,
    powers: evidence.powers.filter(kept),
    testedUpTo_m3_s: tested_m3_s === null ? null : Math.min(tested_m3_s, furthest_m3_s),
  };
}

function estimateAsRead(evidence: FanEvidence, lopsided: boolean, near: Float64Array | null): FanEstimate | null {
  const { family } = evidence;
  const chart = leadingChart(evidence.charts);
  const others = evidence.charts.filter((c) => chart === null || c.group !== chart.group).flatMap(asObservations);
  const pressures = [...evidence.pressures, ...others.flatMap((o) => o.pressures)];
  const powers = [...evidence.powers, ...others.flatMap((o) => o.powers)];

  let base: BaseCurve;
  let spread: ModelSpread;
  if (chart) {
    base = baseFromChart(chart.kind, chart.pressure, chart.shaftPower, family);
    spread = {
      pressureLevel: chart.deviation.pressure,
      flowLevel: chart.deviation.flow,
      outletArea: evidence.outletAreaSd,
      speed: evidence.speedSd,
      shape: { sd: SHAPE_SHARE * chart.deviation.pressure, length: family.deviation.length },
      beyond: family.deviation.sd,
      powerLevel: chart.deviation.shaftPower,
      powerTilt: powers.length > 0 ? USED_POWER.tilt : 0,
      powerShape: Math.max(SHAPE_SHARE * chart.deviation.shaftPower, powers.length > 0 ? USED_POWER.wave : 0),
    };
  } else {
    const level = evidence.familyLevel ?? levelFromReadings(pressures);
    if (level === null) return null;
    const known = evidence.familyLevel !== null;
    base = baseFromFamily(family, level.pressure_Pa, level.flow_m3_s);
    spread = {
      pressureLevel: known ? family.psiShutOff.lnSd : LEVEL_FROM_READINGS_SD.pressure,
      flowLevel: known ? family.phiFree.lnSd : LEVEL_FROM_READINGS_SD.flow,
      outletArea: evidence.outletAreaSd,
      speed: evidence.speedSd,
      shape: family.deviation,
      beyond: 0,
      powerLevel: EFFICIENCY.sd,
      powerTilt: POWER_SHAPE.tilt,
      powerShape: POWER_SHAPE.wave,
    };
  }

  const powerPrinted = chart !== null && chart.shaftPower !== null && chart.shaftPower.length > 0;
  if (!powerPrinted) {
    base = { ...base, power: shapePreservingCubic(family.powerShape) };
    spread = { ...spread, powerLevel: EFFICIENCY.sd, powerTilt: POWER_SHAPE.tilt, powerShape: POWER_SHAPE.wave };
  }
  const model = curveModel({
    base,
    spread,
    outletArea_m2: evidence.outletArea_m2,
    airDensity_kg_m3: evidence.airDensity_kg_m3,
    powerFromAir: powerPrinted ? null : { bestAt: family.bestAt, efficiency: likelyEfficiency(family) },
  });
  const hint = powerPrinted
    ? []
    : motorSizeHint(
        evidence.motorPowerAtWheel_W,
        family.bestAt,
        chart && model.curve(new Float64Array(CURVE_UNKNOWNS)),
      );
  const starts = near ? [near] : chart ? [new Float64Array(CURVE_UNKNOWNS)] : scannedStarts(model, pressures, powers);
  // a chart says itself where it ends
  const reach = chart ? [] : reachHint(evidence.testedUpTo_m3_s);
  const posterior = fitCurve(model, pressures, powers, [...hint, ...reach], starts, lopsided);
  const best = model.curve(posterior.mode);
  return {
    model,
    posterior,
    best,
    powerSource: powerPrinted ? 'chart' : powers.length > 0 ? 'measured' : 'family',
    knots_m3_s: knotsOf(base, best),
    familyOnlyDeviation_Pa: familyOnly(evidence, best),
    withoutSlip: null,
  };
}

function levelFromReadings(
  pressures: readonly PressureObservation[],
): { pressure_Pa: number; flow_m3_s: number } | null {
  const pressure = Math.max(...pressures.map((o) => o.pressure_Pa));
  const flow = Math.max(...pressures.map((o) => o.flow_m3_s));
  if (!(pressure > LEAST_LEVEL.pressure_Pa) || !(flow > LEAST_LEVEL.flow_m3_s)) return null;
  return { pressure_Pa: 1.1 * pressure, flow_m3_s: 1.5 * flow };
}

/** Flows where crossings are looked for: the chart's own points and a regular net to well past free delivery. */
function knotsOf(base: BaseCurve, best: CurveAt): number[] {
  const top = 1.3 * Math.max(best.flowScale_m3_s, base.knots_m3_s[base.knots_m3_s.length - 1] ?? 0);
  const stretch = best.flowScale_m3_s / base.flowScale_m3_s;
  const net = Array.from({ length: 61 }, (_, i) => (i / 60) * top);
  return [...new Set([...base.knots_m3_s.map((q) => q * stretch), ...net])]
    .filter((q) => q >= 0 && q <= top)
    .sort((a, b) => a - b);
}

/** Doubt of the family alone: level of pressure, level of flow through the slope, and shape. */
function familyOnly(evidence: FanEvidence, best: CurveAt): (flow: number) => number {
  const { family } = evidence;
  const scale = Math.max(best.static_Pa(0), 1e-9);
  return (flow) => {
    const step = 0.005 * best.flowScale_m3_s;
    const slope =
      (best.total_Pa(flow + step) - best.total_Pa(Math.max(flow - step, 0))) / (step + Math.min(step, flow));
    return Math.hypot(
      best.total_Pa(flow) * family.psiShutOff.lnSd,
      flow * slope * family.phiFree.lnSd,
      scale * family.deviation.sd,
    );
  };
}
