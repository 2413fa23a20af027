import { CURVE_UNKNOWNS, type CurveAt, type CurveModel } from './model.ts';
import type { PowerObservation, PressureObservation, SharedErrorEffect } from './observation.ts';

/** Extra knowledge: a residual in standard deviations, zero where satisfied. */
export type PseudoObservation = (curve: CurveAt) => number;

/** Curve against observations: residuals, their standard deviations and their slopes in every unknown. */
export type Comparison = {
  /** names of the errors that follow the curve's own unknowns in z */
  sharedErrors: string[];
  unknowns: number;
  residuals: number;
  /** the observations behind the first residuals; pseudo-observations follow them */
  paths: { path: string; kind: 'pressure' | 'power' }[];
  evaluate(z: Float64Array, out: Float64Array): void;
  deviations(z: Float64Array, out: Float64Array): void;
  /**
   * ln of how far the residuals move for one more pascal at each water tube, added up: makes a density of residuals one of readings,
   * so that explanations which make other flows and pressures of the same readings can be held against each other
   */
  lnPerPascal(z: Float64Array): number;
  /** @param r the residuals at z @param out row-major residuals × unknowns */
  slopes(z: Float64Array, r: Float64Array, out: Float64Array): void;
};

/** Even a perfect reading is not believed closer than this share of the top pressure: the model itself is not exact. */
const MODEL_ERROR = 0.004;
/** No motor follows its circle diagram, nor a wheel its power curve, closer than this. Estimated. */
const POWER_MODEL_ERROR = 0.008;
const LEAST_POWER_W = 1e-9;
/** Share of a pascal that is felt at least [-]: a rising curve may run along the very line on which a misread tube moves its point. */
const LEAST_MOVED = 0.01;
const STEP = 1e-4;

/** Sets up the comparison of a curve with everything observed. Pressures in [Pa], powers in ln, pseudo-observations in standard deviations. */
export function comparison(
  model: CurveModel,
  pressures: readonly PressureObservation[],
  powers: readonly PowerObservation[],
  pseudo: readonly PseudoObservation[],
): Comparison {
  const sharedErrors = [
    ...new Set([
      ...[...pressures, ...powers].flatMap((o) => o.shared.map((s) => s.error)),
      ...powers.flatMap((o) => o.unknowns),
    ]),
  ].sort();
  const place = new Map(sharedErrors.map((name, i) => [name, CURVE_UNKNOWNS + i]));
  const n = CURVE_UNKNOWNS + sharedErrors.length;
  const m = pressures.length + powers.length + pseudo.length;
  const curve = model.cursor();
  const moved = model.cursor();
  const placed = <T extends { shared: SharedErrorEffect[] }>(o: T) => ({
    o,
    shared: o.shared.map((s) => ({ at: place.get(s.error)!, flow_m3_s: s.flow_m3_s, value: s.value })),
  });
  const atPressures = pressures.map(placed);
  const atPowers = powers.map((o) => ({
    ...placed(o),
    at: o.unknowns.map((name) => place.get(name)!),
    deviates: new Float64Array(o.unknowns.length),
  }));

  const flowOf = (o: { flow_m3_s: number }, shared: readonly { at: number; flow_m3_s: number }[], z: Float64Array) => {
    let flow = o.flow_m3_s;
    for (const s of shared) flow += z[s.at]! * s.flow_m3_s;
    return Math.max(flow, 0);
  };
  const pressureOf = (o: PressureObservation, flow: number) =>
    o.kind === 'static' ? curve.static_Pa(flow) : curve.total_Pa(flow);
  const foreseen = (p: (typeof atPowers)[number], flow: number, z: Float64Array) => {
    for (let k = 0; k < p.at.length; k++) p.deviates[k] = z[p.at[k]!]!;
    return p.o.lnForeseen(Math.max(curve.shaftPower_W(flow), LEAST_POWER_W), p.deviates);
  };
  /** d(ln of the reading)/d(ln of the wheel's power) */
  const answer = (p: (typeof atPowers)[number], power_W: number, z: Float64Array) => {
    for (let k = 0; k < p.at.length; k++) p.deviates[k] = z[p.at[k]!]!;
    const here = p.o.lnForeseen(power_W, p.deviates);
    return (p.o.lnForeseen(power_W * (1 + STEP), p.deviates) - here) / STEP;
  };
  const gradient = new Float64Array(CURVE_UNKNOWNS);

  const withCurve = (z: Float64Array, out: Float64Array) => {
    let row = 0;
    for (const { o, shared } of atPressures) {
      let pressure = o.pressure_Pa;
      for (const s of shared) pressure += z[s.at]! * s.value;
      out[row++] = pressureOf(o, flowOf(o, shared, z)) - pressure;
    }
    for (const p of atPowers) {
      let reading = p.o.lnReading;
      for (const s of p.shared) reading += z[s.at]! * s.value;
      out[row++] = foreseen(p, flowOf(p.o, p.shared, z), z) - reading;
    }
    for (const p of pseudo) out[row++] = p(curve);
  };

  return {
    sharedErrors,
    unknowns: n,
    residuals: m,
    paths: [
      ...pressures.map((o) => ({ path: o.path, kind: 'pressure' as const })),
      ...powers.map((o) => ({ path: o.path, kind: 'power' as const })),
    ],

    evaluate(z, out) {
      curve.load(z);
      withCurve(z, out);
    },

    deviations(z, out) {
      curve.load(z);
      let row = 0;
      for (const { o, shared } of atPressures) {
        const perFlow = curve.pressureSlopes(o.kind, flowOf(o, shared, z), gradient);
        let variance = (MODEL_ERROR * model.base.pressureScale_Pa) ** 2;
        for (const e of o.own) variance += (perFlow * e.flow_m3_s - e.value) ** 2;
        out[row++] = Math.sqrt(variance);
      }
      for (const p of atPowers) {
        const flow = flowOf(p.o, p.shared, z);
        const power = Math.max(curve.shaftPower_W(flow), LEAST_POWER_W);
        const perFlow = answer(p, power, z) * curve.lnPowerSlopes(flow, gradient);
        let variance = POWER_MODEL_ERROR ** 2;
        for (const e of p.o.own) variance += (perFlow * e.flow_m3_s - e.value) ** 2;
        out[row++] = Math.sqrt(variance);
      }
      out.fill(1, row);
    },

    lnPerPascal(z) {
      curve.load(z);
      let sum = 0;
      for (const { o, shared } of atPressures) {
        if (o.perPascal === undefined) continue;
        const perFlow = curve.pressureSlopes(o.kind, flowOf(o, shared, z), gradient);
        const moved = Math.abs(perFlow * o.perPascal.flow_m3_s - o.perPascal.value);
        sum += Math.log(Math.max(moved, LEAST_MOVED * Math.abs(o.perPascal.value)));
      }
      return sum;
    },

    slopes(z, r, out) {
      out.fill(0);
      curve.load(z);
      let row = 0;
      // shared errors move a reading along the curve: its slope is all one needs
      for (const { o, shared } of atPressures) {
        const perFlow = curve.pressureSlopes(o.kind, flowOf(o, shared, z), gradient);
        for (let a = 0; a < CURVE_UNKNOWNS; a++) out[row * n + a] = gradient[a]!;
        for (const s of shared) out[row * n + s.at]! += perFlow * s.flow_m3_s - s.value;
        row++;
      }
      for (const p of atPowers) {
        const flow = flowOf(p.o, p.shared, z);
        const power = Math.max(curve.shaftPower_W(flow), LEAST_POWER_W);
        const perLnPower = answer(p, power, z);
        const perFlow = perLnPower * curve.lnPowerSlopes(flow, gradient);
        for (let a = 0; a < CURVE_UNKNOWNS; a++) out[row * n + a] = perLnPower * gradient[a]!;
        for (const s of p.shared) out[row * n + s.at]! += perFlow * s.flow_m3_s - s.value;
        const here = foreseen(p, flow, z);
        for (const at of p.at) {
          const kept = z[at]!;
          z[at] = kept + STEP;
          out[row * n + at]! += (foreseen(p, flow, z) - here) / STEP;
          z[at] = kept;
        }
        row++;
      }
      for (let a = 0; a < CURVE_UNKNOWNS && pseudo.length > 0; a++) {
        const kept = z[a]!;
        z[a] = kept + STEP;
        moved.load(z);
        z[a] = kept;
        pseudo.forEach((p, i) => (out[(row + i) * n + a] = (p(moved) - r[row + i]!) / STEP));
      }
    },
  };
}
