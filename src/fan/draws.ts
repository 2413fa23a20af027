import { solveLower } from '../numeric/cholesky.ts';
import { normalDeviates } from '../numeric/deviates.ts';
import { drawUnknowns } from './fit.ts';
import { tabulated } from '../numeric/interpolate.ts';
import { CURVE_UNKNOWNS, UNKNOWN, curveModel } from './model.ts';
import { DRIVE_EFFICIENCY_ERROR, MOTOR_EFFICIENCY_ERROR } from './observation.ts';
import type { FanEstimate } from './estimate.ts';

/**
 * Possible true curves of a blower, drawn jointly from what the evidence allows, on a common net of flows.
 * The same seed gives the same draws, so that differences between cases, blowers and remedies are real.
 */
export type FanDraws = {
  count: number;
  /** net of flows [m3/s], from 0, evenly spaced */
  flows_m3_s: Float64Array;
  /** count × flows, total pressure [Pa] and shaft power of the wheel [W] */
  total_Pa: Float64Array;
  shaftPower_W: Float64Array;
  /** per draw, a deviate for the drive's efficiency: the one the power was read through, else one of its own */
  driveDeviate: Float64Array;
  /** the same for the motor's own efficiency */
  motorDeviate: Float64Array;
  /** per draw, the deviates of run speed and outlet area */
  speedDeviate: Float64Array;
  outletDeviate: Float64Array;
  /** per draw, velocity pressure in the outlet at 1 m3/s less that of the best guess [Pa]: what a bare outlet loses more */
  outletExcess: Float64Array;
};

const NET = 48;
/** A draw no fan could be is brought halfway to the middle of all, so many times at most; it is looked at up to here [of free delivery]. */
const MOST_PULLS = 4;
const BEFORE_FREE = 0.95;
/** The net reaches no further than this multiple of free delivery, lest it gets too coarse. */
const FURTHEST = 3.5;

/**
 * Draws possible true curves.
 * @param count how many; even numbers keep the mirrored pairs whole
 */
export function drawFanCurves(estimate: FanEstimate, count: number, seed = 1): FanDraws {
  // where a reading contradicts all others, every other pair of draws goes without it
  const believed = estimate.withoutSlip ? [estimate, estimate.withoutSlip] : [estimate];
  const top = Math.max(...believed.map((e) => Math.max(e.knots_m3_s.at(-1)!, likelyTop(e))));
  const dimensions = Math.max(...believed.map((e) => e.posterior.dimensions)) + 2;
  const deviates = normalDeviates(count, dimensions, seed);
  const flows = Float64Array.from({ length: NET + 1 }, (_, i) => (i / NET) * top);
  const total = new Float64Array(count * flows.length);
  const power = new Float64Array(count * flows.length);
  const driveDeviate = new Float64Array(count);
  const motorDeviate = new Float64Array(count);
  const speedDeviate = new Float64Array(count);
  const outletDeviate = new Float64Array(count);
  const outletExcess = new Float64Array(count);
  const { outletArea_m2: area, airDensity_kg_m3: density } = estimate.model;
  const outletFactor = area === null ? 0 : density / (2 * area * area);
  const sources = believed.map(({ model, posterior }) => ({
    // a thousand curves are read off a fine table instead of the cubic: 1e-6 of the top pressure apart, three times as fast
    model: curveModel({
      ...model,
      base: { ...model.base, pressure: tabulated(model.base.pressure), power: tabulated(model.base.power) },
    }),
    posterior,
    z: new Float64Array(posterior.dimensions),
    drive: posterior.sharedErrors.indexOf(DRIVE_EFFICIENCY_ERROR),
    motor: posterior.sharedErrors.indexOf(MOTOR_EFFICIENCY_ERROR),
  }));
  /** static pressure below nothing before free delivery: no fan does that */
  const fallsTwice = ({ model, z: at }: (typeof sources)[number], offset: number) => {
    const outlet = outletFactor * Math.exp(-2 * model.spread.outletArea * at[UNKNOWN.outletArea]!);
    const free =
      model.base.flowScale_m3_s *
      Math.exp(model.spread.flowLevel * at[UNKNOWN.flowLevel]! + model.spread.speed * at[UNKNOWN.speed]!);
    const end = Math.min(flows.length, Math.ceil((BEFORE_FREE * free) / flows[1]!));
    for (let i = 0; i < end; i++) if (total[offset + i]! < outlet * flows[i]! * flows[i]!) return true;
    return false;
  };
  for (let d = 0; d < count; d++) {
    const source = sources[(d >> 1) % sources.length]!;
    const { model, posterior, z, drive, motor } = source;
    drawUnknowns(posterior, deviates, d * dimensions, z);
    model.sample(z, flows, total, power, d * flows.length);
    for (let k = 0; k < MOST_PULLS && fallsTwice(source, d * flows.length); k++) {
      for (let i = 0; i < z.length; i++) z[i] = 0.5 * (z[i]! + posterior.mode[i]!);
      model.sample(z, flows, total, power, d * flows.length);
    }
    driveDeviate[d] = drive < 0 ? deviates[d * dimensions + dimensions - 1]! : z[CURVE_UNKNOWNS + drive]!;
    motorDeviate[d] = motor < 0 ? deviates[d * dimensions + dimensions - 2]! : z[CURVE_UNKNOWNS + motor]!;
    speedDeviate[d] = z[UNKNOWN.speed]!;
    outletDeviate[d] = z[UNKNOWN.outletArea]!;
    outletExcess[d] = outletFactor * Math.expm1(-2 * model.spread.outletArea * z[UNKNOWN.outletArea]!);
  }
  return {
    count,
    flows_m3_s: flows,
    total_Pa: total,
    shaftPower_W: power,
    driveDeviate,
    motorDeviate,
    speedDeviate,
    outletDeviate,
    outletExcess,
  };
}

/** Flow that free delivery reaches in all but a few draws [m3/s]: the net must hold the crossings of nearly all of them. */
function likelyTop({ best, model, posterior }: FanEstimate): number {
  const unit = new Float64Array(posterior.dimensions);
  unit[UNKNOWN.flowLevel] = 1;
  const sd = model.spread.flowLevel * Math.hypot(...solveLower(posterior.precision, posterior.dimensions, unit));
  return best.flowScale_m3_s * Math.min(1.15 * Math.exp(2 * sd), FURTHEST);
}

export type CurveBand = {
  flow_m3_s: number[];
  totalPressure_Pa: number[];
  staticPressure_Pa: number[];
  low95_Pa: number[];
  high95_Pa: number[];
  shaftPower_W: number[];
  shaftPowerLow95_W: number[];
  shaftPowerHigh95_W: number[];
};

/** A doubt wider than this factor says nothing any more, and would run out of numbers. */
const MOST_LN_SD = 3;

/** Best curve with its 95 % band, from shut-off to where the best total pressure has fallen to nothing or the net ends. */
export function curveBand(estimate: FanEstimate, draws: FanDraws): CurveBand {
  const { best } = estimate;
  const width = draws.flows_m3_s.length;
  const band: CurveBand = {
    flow_m3_s: [],
    totalPressure_Pa: [],
    staticPressure_Pa: [],
    low95_Pa: [],
    high95_Pa: [],
    shaftPower_W: [],
    shaftPowerLow95_W: [],
    shaftPowerHigh95_W: [],
  };
  for (let i = 0; i < width; i++) {
    const flow = draws.flows_m3_s[i]!;
    const total = best.total_Pa(flow);
    const power = best.shaftPower_W(flow);
    const pressureSd = spreadAt(draws.total_Pa, width, i, total, (v) => v);
    const powerSd =
      power > 0 ? Math.min(MOST_LN_SD, spreadAt(draws.shaftPower_W, width, i, Math.log(power), Math.log)) : 0;
    band.flow_m3_s.push(flow);
    band.totalPressure_Pa.push(total);
    band.staticPressure_Pa.push(best.static_Pa(flow));
    band.low95_Pa.push(total - 1.96 * pressureSd);
    band.high95_Pa.push(total + 1.96 * pressureSd);
    band.shaftPower_W.push(power);
    band.shaftPowerLow95_W.push(power * Math.exp(-1.96 * powerSd));
    band.shaftPowerHigh95_W.push(power * Math.exp(1.96 * powerSd));
    if (best.static_Pa(flow) < -0.05 * best.static_Pa(0)) break;
  }
  return band;
}

/** Root mean square distance of the draws from the best value at one place of the net, in the given measure. */
function spreadAt(
  values: Float64Array,
  width: number,
  i: number,
  best: number,
  measure: (v: number) => number,
): number {
  let sum = 0;
  const count = values.length / width;
  for (let d = 0; d < count; d++)
    sum += (measure(Math.max(values[d * width + i]!, measure === Math.log ? 1e-9 : -Infinity)) - best) ** 2;
  return Math.sqrt(sum / count);
}
