import { baseFromChart, baseFromFamily, type BaseCurve, type ChartPoints } from './base-curve.ts';
import type { FamilyShape } from './families.ts';
import { fitCurve, type Posterior, type PseudoObservation } from './fit.ts';
import { CURVE_UNKNOWNS, UNKNOWN, curveModel, type CurveAt, type CurveModel, type ModelSpread } from './model.ts';
import type { PowerObservation, PressureObservation } from './observation.ts';
import { shapePreservingCubic } from '../numeric/interpolate.ts';

/** A chart already brought to run speed and site air. */
export type ChartCurve = {
  kind: 'static' | 'total';
  pressure: ChartPoints;
  shaftPower: ChartPoints | null;
  /** relative standard deviations of its tolerance */
  deviation: { flow: number; pressure: number; shaftPower: number };
  /** charts of one group share one error (one photo, one sheet) */
  group: string;
  /** |ln(chart speed / run speed)|: of one group the nearest is believed */
  speedDistance: number;
  /** JSON Pointer of the evidence */
  path: string;
};

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
};

/** A chart's shape is doubted by this share of its pressure tolerance, over and above the tolerance itself. Estimated. */
const SHAPE_SHARE = 0.4;
/** Best total efficiency of a small-shop wheel against the handbook's peak, and how surely. Source: feasibility figures. */
const EFFICIENCY = { ofPeak: 0.93, sd: 0.16 };
/** Motors are chosen to run at about three quarters load. Source: US DOE, motors are meant for 50–100 % (from memory). */
const TYPICAL_LOAD = { fraction: 0.75, sd: 0.35 };
/** Without a size the level comes from the readings alone. */
const LEVEL_FROM_READINGS_SD = { pressure: 0.7, flow: 1 };
/** Readings that never rise above these show no blower. */
const LEAST_LEVEL = { pressure_Pa: 0.1, flow_m3_s: 1e-4 };
const SECOND_CHART_POINTS = 15;

/** Joins all evidence into one curve with its doubt; null where neither evidence nor the wheel's size gives a level. */
export function estimateFan(evidence: FanEvidence): FanEstimate | null {
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
      powerTilt: 0,
      powerShape: SHAPE_SHARE * chart.deviation.shaftPower,
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
    base = { ...base, ...powerOfFamily(base, evidence) };
    spread = { ...spread, powerLevel: EFFICIENCY.sd, powerTilt: POWER_SHAPE.tilt, powerShape: POWER_SHAPE.wave };
  }
  const model = curveModel({
    base,
    spread,
    outletArea_m2: evidence.outletArea_m2,
    airDensity_kg_m3: evidence.airDensity_kg_m3,
    powerFollowsAir: !powerPrinted,
  });
  const pseudo = powerPrinted ? [] : motorSizeHint(evidence, family.bestAt);
  const posterior = fitCurve(
    model,
    pressures,
    powers,
    pseudo,
    chart ? new Float64Array(CURVE_UNKNOWNS) : scannedStart(model, pressures),
  );
  const best = model.curve(posterior.mode);
  return {
    model,
    posterior,
    best,
    powerSource: powerPrinted ? 'chart' : powers.length > 0 ? 'measured' : 'family',
    knots_m3_s: knotsOf(base, best),
    familyOnlyDeviation_Pa: familyOnly(evidence, best),
  };
}

/** Doubt of the family's power shape: tilt towards shut-off and waves. Source: feasibility figures (estimated). */
const POWER_SHAPE = { tilt: 0.25, wave: 0.08 };

/** Of the most trusted group the chart nearest in speed; independent of the order of evidence. */
function leadingChart(charts: readonly ChartCurve[]): ChartCurve | null {
  const rank = (c: ChartCurve) =>
    [c.deviation.pressure, c.speedDistance, -c.pressure.length, JSON.stringify(c.pressure)] as const;
  return [...charts].sort((a, b) => compare(rank(a), rank(b)))[0] ?? null;
}

function compare(a: readonly (number | string)[], b: readonly (number | string)[]): number {
  for (let i = 0; i < a.length; i++) {
    if (a[i]! < b[i]!) return -1;
    if (a[i]! > b[i]!) return 1;
  }
  return 0;
}

/** A further chart as observations that share its tolerance. */
function asObservations(chart: ChartCurve): { pressures: PressureObservation[]; powers: PowerObservation[] } {
  const top = Math.max(...chart.pressure.map((p) => p[1]));
  const { flow, pressure, shaftPower } = chart.deviation;
  const flowError = (q: number) => ({ error: `${chart.group}/flow`, flow_m3_s: flow * q, value: 0 });
  return {
    pressures: thinned(chart.pressure).map(([q, p]) => ({
      kind: chart.kind,
      flow_m3_s: q,
      pressure_Pa: p,
      shared: [flowError(q), { error: `${chart.group}/pressure`, flow_m3_s: 0, value: pressure * p }],
      own: [{ flow_m3_s: 0, value: SHAPE_SHARE * pressure * top }],
      path: chart.group,
    })),
    powers: thinned(chart.shaftPower ?? [])
      .filter(([, w]) => w > 0)
      .map(([q, w]) => ({
        flow_m3_s: q,
        shaftPower_W: w,
        shared: [flowError(q), { error: `${chart.group}/power`, flow_m3_s: 0, value: shaftPower }],
        own: [{ flow_m3_s: 0, value: SHAPE_SHARE * shaftPower }],
        path: chart.group,
      })),
  };
}

function thinned<T>(points: readonly T[]): T[] {
  if (points.length <= SECOND_CHART_POINTS) return [...points];
  return Array.from(
    { length: SECOND_CHART_POINTS },
    (_, i) => points[Math.round((i * (points.length - 1)) / (SECOND_CHART_POINTS - 1))]!,
  );
}

function levelFromReadings(
  pressures: readonly PressureObservation[],
): { pressure_Pa: number; flow_m3_s: number } | null {
  const pressure = Math.max(...pressures.map((o) => o.pressure_Pa));
  const flow = Math.max(...pressures.map((o) => o.flow_m3_s));
  if (!(pressure > LEAST_LEVEL.pressure_Pa) || !(flow > LEAST_LEVEL.flow_m3_s)) return null;
  return { pressure_Pa: 1.1 * pressure, flow_m3_s: 1.5 * flow };
}

/** Family power shape at the level its usual efficiency gives. */
function powerOfFamily(base: BaseCurve, evidence: FanEvidence): Pick<BaseCurve, 'power' | 'powerScale_W'> {
  const { family, outletArea_m2: area, airDensity_kg_m3: density } = evidence;
  const shape = shapePreservingCubic(family.powerShape);
  const flow = family.bestAt * base.flowScale_m3_s;
  const native = base.pressureScale_Pa * base.pressure.value(family.bestAt);
  const total = base.kind === 'static' && area !== null ? native + (density / 2) * (flow / area) ** 2 : native;
  const power =
    (flow * Math.max(total, 0.05 * base.pressureScale_Pa)) / (EFFICIENCY.ofPeak * family.peakTotalEfficiency);
  return { power: shape, powerScale_W: power / shape.value(family.bestAt) };
}

function motorSizeHint(evidence: FanEvidence, bestAt: number): PseudoObservation[] {
  const rated = evidence.motorPowerAtWheel_W;
  if (rated === null) return [];
  return [
    (curve) =>
      Math.log(curve.shaftPower_W(bestAt * curve.flowScale_m3_s) / (TYPICAL_LOAD.fraction * rated)) / TYPICAL_LOAD.sd,
  ];
}

/** Start for the fit: the flow level by scan, the pressure level in proportion. */
function scannedStart(model: CurveModel, pressures: readonly PressureObservation[]): Float64Array {
  const best = { cost: Infinity, z: new Float64Array(CURVE_UNKNOWNS) };
  if (pressures.length === 0) return best.z;
  const { pressureLevel, flowLevel } = model.spread;
  for (let zq = -4; zq <= 4; zq += 0.25) {
    const z = new Float64Array(CURVE_UNKNOWNS);
    z[UNKNOWN.flowLevel] = zq;
    const curve = model.curve(z);
    const at = pressures.map((o) => (o.kind === 'static' ? curve.static_Pa : curve.total_Pa)(o.flow_m3_s));
    const own = at.reduce((s, v) => s + v * v, 0);
    const both = at.reduce((s, v, i) => s + v * pressures[i]!.pressure_Pa, 0);
    const ratio = Math.min(Math.max(both / own, 1e-3), 1e3);
    z[UNKNOWN.pressureLevel] = Math.log(ratio) / pressureLevel;
    const top = model.base.pressureScale_Pa * ratio;
    const misfit = at.reduce((s, v, i) => s + ((ratio * v - pressures[i]!.pressure_Pa) / (0.1 * top)) ** 2, 0);
    const cost = misfit + zq * zq + z[UNKNOWN.pressureLevel]! ** 2;
    if (cost < best.cost && flowLevel > 0) Object.assign(best, { cost, z });
  }
  return best.z;
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
