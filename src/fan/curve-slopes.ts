import {
  LEAST_POWER_SHARE,
  LEAST_PRESSURE_SHARE,
  POWER_ENDS,
  shareInside,
  type CurveAt,
  type ModelInput,
  type Unpacked,
} from './curve-numbers.ts';
import {
  CURVE_UNKNOWNS,
  POWER_TERMS,
  SHAPE_TERMS,
  UNKNOWN,
  cosineSlopes,
  cosineTerms,
  shapeWeights,
  sineSeries,
  sineSlopes,
  sineTerms,
} from './unknowns.ts';

/** Below this the air power has no say in the shaft power. */
const NO_SHARE = 1e-6;

/** First derivatives of the curve that `c` holds at the moment: in its unknowns (filled into `out`, in the order of `UNKNOWN`) and in the flow (returned). */
export type CurveSlopes = {
  /** of static or total pressure [Pa] */
  pressureSlopes(kind: 'static' | 'total', flow_m3_s: number, out: Float64Array): number;
  /** of ln(shaft power) [-] */
  lnPowerSlopes(flow_m3_s: number, out: Float64Array): number;
};

/**
 * Derivatives of the curve model in closed form; `model.ts` has the formulas they belong to.
 * Source: definition, checked against finite differences in the tests.
 */
export function curveSlopes(input: ModelInput, c: Unpacked, at: CurveAt): CurveSlopes {
  const { base, spread, powerFromAir: fromAir } = input;
  const shapeSd = shapeWeights(spread.shape);
  const { low, high } = base.known;
  const ofAir = new Float64Array(CURVE_UNKNOWNS);
  const [terms, rises] = [new Float64Array(SHAPE_TERMS), new Float64Array(SHAPE_TERMS)];
  const [bends, turns] = [new Float64Array(POWER_TERMS), new Float64Array(POWER_TERMS)];

  /** of the base curve's own kind, static or total */
  const native = (flow: number, out: Float64Array): number => {
    out.fill(0);
    const scale_Pa = c.topPressure_Pa;
    const x = flow / c.flowScale_m3_s;
    let value = base.pressure.value(x) + sineSeries(c.shape, x);
    let slope = base.pressure.slope(x);
    sineTerms(x, terms);
    sineSlopes(x, rises);
    for (let k = 0; k < SHAPE_TERMS; k++) {
      slope += c.shape[k]! * rises[k]!;
      out[UNKNOWN.shape + k] = scale_Pa * shapeSd[k]! * terms[k]!;
    }
    if (x < low) {
      const share = (low - x) / low;
      value += c.lowEnd * share * share;
      slope -= (2 * c.lowEnd * share) / low;
      out[UNKNOWN.lowEnd] = scale_Pa * spread.beyond * share * share;
    }
    if (high > low && high < 1 && x > high) {
      const share = (x - high) / (1 - high);
      value += c.highEnd * share * share;
      slope += (2 * c.highEnd * share) / (1 - high);
      out[UNKNOWN.highEnd] = scale_Pa * spread.beyond * share * share;
    }
    const perFlow = (scale_Pa * slope) / c.flowScale_m3_s;
    out[UNKNOWN.pressureLevel] = spread.pressureLevel * scale_Pa * value;
    out[UNKNOWN.flowLevel] = -spread.flowLevel * flow * perFlow;
    out[UNKNOWN.speed] = spread.speed * (2 * scale_Pa * value - flow * perFlow);
    return perFlow;
  };

  const pressure = (kind: 'static' | 'total', flow: number, out: Float64Array): number => {
    const perFlow = native(flow, out);
    if (kind === base.kind) return perFlow;
    const sign = kind === 'total' ? 1 : -1;
    out[UNKNOWN.outletArea] = -2 * sign * spread.outletArea * c.outletFactor * flow * flow;
    return perFlow + 2 * sign * c.outletFactor * flow;
  };

  const lnPower = (flow: number, out: Float64Array): number => {
    const perFlow = lnGuess(flow, out);
    const air = flow * at.total_Pa(flow);
    const share = fromAir === null ? 0 : shareInside(at.shaftPower_W(flow), air);
    if (share < NO_SHARE) return perFlow;
    const airPerFlow = pressure('total', flow, ofAir) + air / flow / flow;
    for (let k = 0; k < CURVE_UNKNOWNS; k++) out[k]! += share * ((ofAir[k]! * flow) / air - out[k]!);
    return perFlow + share * ((airPerFlow * flow) / air - perFlow);
  };

  /** of ln(shaft power) before it is kept above the air power */
  const lnGuess = (flow: number, out: Float64Array): number => {
    if (fromAir === null) {
      out.fill(0);
      out[UNKNOWN.speed] = 3 * spread.speed;
    } else atBest(fromAir.bestAt, out);
    out[UNKNOWN.powerLevel] = spread.powerLevel;
    const x = flow / c.flowScale_m3_s;
    const perX = addShape(x, 1, out);
    out[UNKNOWN.flowLevel]! -= spread.flowLevel * x * perX;
    out[UNKNOWN.speed]! -= spread.speed * x * perX;
    return perX / c.flowScale_m3_s;
  };

  /** ln of shape and bend of the power at x, added `times`; returns its slope in x */
  const addShape = (x: number, times: 1 | -1, out: Float64Array): number => {
    const held = base.power.value(Math.min(x, POWER_ENDS));
    let perX = x < POWER_ENDS && held > LEAST_POWER_SHARE ? base.power.slope(x) / held : 0;
    const toEnd = Math.max(1 - x, 0);
    out[UNKNOWN.powerTilt]! += times * spread.powerTilt * toEnd ** 2;
    perX -= 2 * c.tilt * toEnd;
    cosineTerms(x, bends);
    cosineSlopes(x, turns);
    for (let k = 0; k < POWER_TERMS; k++) {
      perX += c.powerShape[k]! * turns[k]!;
      out[UNKNOWN.powerShape + k]! += (times * spread.powerShape * bends[k]!) / (k + 1);
    }
    return perX;
  };

  /** ln of flow times total pressure at the best point, whose place moves with free delivery */
  const atBest = (bestAt: number, out: Float64Array) => {
    const flow = bestAt * c.flowScale_m3_s;
    const total = at.total_Pa(flow);
    const perFlow = pressure('total', flow, out);
    out[UNKNOWN.flowLevel]! += spread.flowLevel * flow * perFlow;
    out[UNKNOWN.speed]! += spread.speed * flow * perFlow;
    const least = LEAST_PRESSURE_SHARE * c.topPressure_Pa;
    if (total > least) for (let k = 0; k < CURVE_UNKNOWNS; k++) out[k]! /= total;
    else {
      out.fill(0);
      out[UNKNOWN.pressureLevel] = spread.pressureLevel;
      out[UNKNOWN.speed] = 2 * spread.speed;
    }
    out[UNKNOWN.flowLevel]! += spread.flowLevel;
    out[UNKNOWN.speed]! += spread.speed;
    addShape(bestAt, -1, out);
  };

  return { pressureSlopes: pressure, lnPowerSlopes: lnPower };
}
