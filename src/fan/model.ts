import type { BaseCurve } from './base-curve.ts';

/**
 * A fan curve as a base curve times smooth, uncertain deviations. Every unknown is a standard normal deviate z:
 * z = 0 is the base curve itself, and each standard deviation below says how far one unit of z moves it.
 *
 *   pressure = p0·[B(x) + Σ s_k z_k sin kπx + ends],  x = Q / Qf
 *   p0 = p0_base·exp(…), Qf = Qf_base·exp(…): level of pressure and flow, with the speed's error in both
 *   power    = P0·Λ(x)·exp(level + tilt·(1−x)² + Σ d_k z_k sin kπx), P0 as printed, or such that the best point has its efficiency
 *
 * The sine series is a squared-exponential process in reduced rank that vanishes at shut-off and free delivery, so the
 * two levels keep their meaning. Sources: A. Solin & S. Särkkä, Stat. Comput. 30 (2020) 419–446; C. E. Rasmussen &
 * C. K. I. Williams, Gaussian Processes for Machine Learning (2006) ch. 2.
 */
export type ModelSpread = {
  /** standard deviations in ln: level of pressure, level of flow, outlet area, run speed */
  pressureLevel: number;
  flowLevel: number;
  outletArea: number;
  speed: number;
  /** smooth deviation of the pressure shape: standard deviation relative to the top pressure, and its length in x */
  shape: { sd: number; length: number };
  /** how much the shape is doubted beyond the printed ends, relative to the top pressure, growing with the square */
  beyond: number;
  /** level of power, where it was never printed that of the best efficiency; tilt towards shut-off; waves */
  powerLevel: number;
  powerTilt: number;
  powerShape: number;
};

/** Place of each unknown in the vector z. */
export const UNKNOWN = {
  pressureLevel: 0,
  flowLevel: 1,
  outletArea: 2,
  speed: 3,
  shape: 4,
  lowEnd: 11,
  highEnd: 12,
  powerLevel: 13,
  powerTilt: 14,
  powerShape: 15,
} as const;
/** At its best point a wheel still makes this share of its top pressure: keeps powers above nothing in the wildest draws. */
const LEAST_PRESSURE_SHARE = 0.05;
const SHAPE_TERMS = 7;
const POWER_TERMS = 4;
export const CURVE_UNKNOWNS = UNKNOWN.powerShape + POWER_TERMS;

export type ModelInput = {
  base: BaseCurve;
  spread: ModelSpread;
  /** outlet area [m2], null where nothing is known of it: static and total are then taken as equal */
  outletArea_m2: number | null;
  airDensity_kg_m3: number;
  /** power comes from the air power at the best point and its efficiency [-], where no chart printed it; null: it is printed */
  powerFromAir: { bestAt: number; efficiency: number } | null;
};

/** Values of the curve for one vector of deviates, ready to be asked at many flows. */
export type CurveAt = {
  total_Pa(flow_m3_s: number): number;
  static_Pa(flow_m3_s: number): number;
  shaftPower_W(flow_m3_s: number): number;
  /** flow scale of this draw: static free delivery [m3/s] */
  flowScale_m3_s: number;
};

export type CurveModel = ModelInput & {
  curve(z: Float64Array): CurveAt;
  /** total pressure and shaft power of one vector of deviates at many flows, written from `offset` on; allocates nothing */
  sample(
    z: Float64Array,
    flows_m3_s: Float64Array,
    total_Pa: Float64Array,
    shaftPower_W: Float64Array,
    offset: number,
  ): void;
};

/** The numbers of one curve, unpacked from its deviates. */
type Unpacked = {
  topPressure_Pa: number;
  flowScale_m3_s: number;
  /** outlet velocity pressure at 1 m3/s [Pa] */
  outletFactor: number;
  shape: Float64Array;
  lowEnd: number;
  highEnd: number;
  power_W: number;
  tilt: number;
  powerShape: Float64Array;
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

/** The model of one blower: from a vector of deviates (see `UNKNOWN`) to pressure [Pa] and shaft power [W] at any flow [m3/s]. */
export function curveModel(input: ModelInput): CurveModel {
  const { base, spread, airDensity_kg_m3: density } = input;
  const shapeSd = shapeWeights(spread.shape);
  const { low, high } = base.known;
  const beyondHigh = high > low && high < 1;
  const powerBends = spread.powerTilt > 0 || spread.powerShape > 0;
  const fromAir = input.powerFromAir;
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
    powerBends && x < 1 ? Math.exp(c.tilt * (1 - x) ** 2 + sineSeries(c.powerShape, x)) : 1;

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
    const x = Math.min(flow / c.flowScale_m3_s, 1.5);
    const power = c.power_W * Math.max(base.power.value(x), 0.02) * powerBend(c, x);
    // a wheel never gives the air more than it takes from the shaft; what a chart prints is left for the reader to doubt
    return fromAir === null ? power : Math.max(power, flow * total_Pa);
  };

  const scratch = emptyCurve();
  return {
    ...input,
    curve(z) {
      const c = unpack(z, emptyCurve());
      return {
        total_Pa: (flow) => totalOf(c, flow),
        static_Pa: (flow) => staticOf(c, flow),
        shaftPower_W: (flow) => powerOf(c, flow, totalOf(c, flow)),
        flowScale_m3_s: c.flowScale_m3_s,
      };
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

/** Standard deviations of the sine terms: their process has the stated deviation on average over 0..1. */
function shapeWeights({ sd, length }: { sd: number; length: number }): Float64Array {
  const weights = new Float64Array(SHAPE_TERMS);
  let sum = 0;
  for (let k = 0; k < SHAPE_TERMS; k++) {
    weights[k] = Math.exp(-(((k + 1) * Math.PI * length) ** 2) / 4);
    sum += weights[k]! ** 2 / 2;
  }
  return weights.map((w) => (sd * w) / Math.sqrt(sum));
}

/** Σ c_k sin(kπx) for x in 0..1, beyond 1 straight on with its slope there. */
function sineSeries(c: Float64Array, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) {
    let slope = 0;
    for (let k = 0; k < c.length; k++) slope += c[k]! * (k + 1) * Math.PI * (k % 2 === 0 ? -1 : 1);
    return slope * (x - 1);
  }
  const angle = Math.PI * x;
  const twiceCos = 2 * Math.cos(angle);
  let before = 0;
  let sine = Math.sin(angle);
  let sum = 0;
  for (let k = 0; k < c.length; k++) {
    sum += c[k]! * sine;
    const next = twiceCos * sine - before;
    before = sine;
    sine = next;
  }
  return sum;
}
