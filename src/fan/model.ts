import {
  LEAST_POWER_SHARE,
  LEAST_PRESSURE_SHARE,
  aboveAir,
  POWER_ENDS,
  type CurveAt,
  type ModelInput,
  type Unpacked,
} from './curve-numbers.ts';
import { curveSlopes, type CurveSlopes } from './curve-slopes.ts';
import { POWER_TERMS, SHAPE_TERMS, UNKNOWN, cosineSeries, shapeWeights, sineSeries } from './unknowns.ts';

export type { CurveAt, ModelInput } from './curve-numbers.ts';
export { CURVE_UNKNOWNS, UNKNOWN, type ModelSpread } from './unknowns.ts';

/** A curve that takes one vector of deviates after another, and how it answers to its unknowns and to the flow. */
export type CurveCursor = CurveAt & CurveSlopes & { load(z: Float64Array): void };

export type CurveModel = ModelInput & {
  curve(z: Float64Array): CurveAt;
  /** the same for fits, which ask for thousands of curves one after another: made once, loaded again and again */
  cursor(): CurveCursor;
  /** total pressure and shaft power of one vector of deviates at many flows, written from `offset` on; allocates nothing */
  sample(
    z: Float64Array,
    flows_m3_s: Float64Array,
    total_Pa: Float64Array,
    shaftPower_W: Float64Array,
    offset: number,
  ): void;
};

const emptyCurve = (): Unpacked => ({
  topPressure_Pa: 0,
  flowScale_m3_s: 0,
  outletFactor: 0,
  shape: new Float64Array(SHAPE_TERMS),
  lowEnd: 0,
  highEnd: 0,
  power_W: 0,
  tilt: 0,
  powerShape: new Float64Array(POWER_TERMS),
});

/**
 * A fan curve as a base curve times smooth, uncertain deviations. Every unknown is a standard normal deviate z:
 * z = 0 is the base curve itself, and the spreads say how far one unit of z moves it.
 *
 *   pressure = p0·[B(x) + Σ s_k z_k sin kπx + ends],  x = Q / Qf
 *   p0 = p0_base·exp(…), Qf = Qf_base·exp(…): level of pressure and flow, with the speed's error in both
 *   power    = P0·Λ(x)·exp(level + tilt·(1−x)² + Σ d_k z_k cos kπx), P0 as printed, or such that the best point has its efficiency
 *
 * The sine series is a squared-exponential process in reduced rank that vanishes at shut-off and free delivery, so the
 * two levels keep their meaning; power may bend at both ends. Sources: A. Solin & S. Särkkä, Stat. Comput. 30 (2020) 419–446; C. E. Rasmussen &
 * C. K. I. Williams, Gaussian Processes for Machine Learning (2006) ch. 2.
 * Flows [m3/s], pressures [Pa], power [W]; deviates as `UNKNOWN` places them.
 */
export function curveModel(input: ModelInput): CurveModel {
  const { base, spread, airDensity_kg_m3: density, powerFromAir: fromAir } = input;
  const shapeSd = shapeWeights(spread.shape);
  const { low, high } = base.known;
  const beyondHigh = high > low && high < 1;
  const powerBends = spread.powerTilt > 0 || spread.powerShape > 0;
  const shapeAtBest = fromAir === null ? 1 : base.power.value(fromAir.bestAt);

  const unpack = (z: Float64Array, into: Unpacked): Unpacked => {
    const speed = spread.speed * z[UNKNOWN.speed]!;
    const levelP = spread.pressureLevel * z[UNKNOWN.pressureLevel]! + 2 * speed;
    const levelQ = spread.flowLevel * z[UNKNOWN.flowLevel]! + speed;
    into.topPressure_Pa = base.pressureScale_Pa * Math.exp(levelP);
    into.flowScale_m3_s = base.flowScale_m3_s * Math.exp(levelQ);
    const area_m2 =
      input.outletArea_m2 === null
        ? Infinity
        : input.outletArea_m2 * Math.exp(spread.outletArea * z[UNKNOWN.outletArea]!);
    into.outletFactor = density / (2 * area_m2 * area_m2);
    for (let k = 0; k < SHAPE_TERMS; k++) into.shape[k] = shapeSd[k]! * z[UNKNOWN.shape + k]!;
    for (let k = 0; k < POWER_TERMS; k++)
      into.powerShape[k] = (spread.powerShape / (k + 1)) * z[UNKNOWN.powerShape + k]!;
    into.lowEnd = spread.beyond * z[UNKNOWN.lowEnd]!;
    into.highEnd = spread.beyond * z[UNKNOWN.highEnd]!;
    into.tilt = spread.powerTilt * z[UNKNOWN.powerTilt]!;
    const levelW = spread.powerLevel * z[UNKNOWN.powerLevel]!;
    into.power_W =
      fromAir === null ? base.powerScale_W * Math.exp(levelW + 3 * speed) : powerScale(into) * Math.exp(levelW);
    return into;
  };
  /** shaft power for one unit of the power shape, from the air power at the best point [W] */
  const powerScale = (c: Unpacked): number => {
    const { bestAt, efficiency } = fromAir!;
    const flow = bestAt * c.flowScale_m3_s;
    const air_W = flow * Math.max(totalOf(c, flow), LEAST_PRESSURE_SHARE * c.topPressure_Pa);
    return air_W / (efficiency * shapeAtBest * powerBend(c, bestAt));
  };
  const powerBend = (c: Unpacked, x: number): number =>
    powerBends ? Math.exp(c.tilt * Math.max(1 - x, 0) ** 2 + cosineSeries(c.powerShape, x)) : 1;

  /** pressure of the base curve's own kind, static or total [Pa] */
  const native = (c: Unpacked, flow: number): number => {
    const x = flow / c.flowScale_m3_s;
    let value = base.pressure.value(x) + sineSeries(c.shape, x);
    if (x < low) value += c.lowEnd * ((low - x) / low) ** 2;
    if (beyondHigh && x > high) value += c.highEnd * ((x - high) / (1 - high)) ** 2;
    return c.topPressure_Pa * value;
  };
  const totalOf = (c: Unpacked, flow: number): number =>
    base.kind === 'total' ? native(c, flow) : native(c, flow) + c.outletFactor * flow * flow;
  const staticOf = (c: Unpacked, flow: number): number =>
    base.kind === 'static' ? native(c, flow) : native(c, flow) - c.outletFactor * flow * flow;
  const powerOf = (c: Unpacked, flow: number, total_Pa: number): number => {
    const x = Math.min(flow / c.flowScale_m3_s, POWER_ENDS);
    const power = c.power_W * Math.max(base.power.value(x), LEAST_POWER_SHARE) * powerBend(c, x);
    // a wheel never gives the air more than it takes from the shaft; what a chart prints is left for the reader to doubt
    return fromAir === null ? power : aboveAir(power, flow * total_Pa);
  };

  const cursor = (): CurveCursor => {
    const c = emptyCurve();
    const at: CurveAt = {
      total_Pa: (flow) => totalOf(c, flow),
      static_Pa: (flow) => staticOf(c, flow),
      shaftPower_W: (flow) => powerOf(c, flow, totalOf(c, flow)),
      flowScale_m3_s: 0,
    };
    const loaded: CurveCursor = {
      ...at,
      ...curveSlopes(input, c, at),
      load(z) {
        unpack(z, c);
        loaded.flowScale_m3_s = c.flowScale_m3_s;
      },
    };
    return loaded;
  };
  const scratch = emptyCurve();
  return {
    ...input,
    cursor,
    curve(z) {
      const loaded = cursor();
      loaded.load(z);
      return loaded;
    },
    sample(z, flows, totals, powers, offset) {
      unpack(z, scratch);
      for (let i = 0; i < flows.length; i++) {
        const total_Pa = totalOf(scratch, flows[i]!);
        totals[offset + i] = total_Pa;
        powers[offset + i] = powerOf(scratch, flows[i]!, total_Pa);
      }
    },
  };
}
