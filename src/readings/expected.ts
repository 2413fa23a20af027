import { bracketedRoot } from '../numeric/root.ts';
import { OPEN_END_LOSS, type Bench } from './bench.ts';
import { methodNamed } from './methods/index.ts';
import { fanPressure, pipeFriction, velocityPressure } from './pressures.ts';
import type { Method, Row } from './schema.ts';

/**
 * What a blower's curve is taken to be before the test, in the air of the test: pressure [Pa] at a flow [m3/s], fan static for a
 * rig on the inlet, fan total for one on the outlet; zero or less from `freeFlow_m3_s` on.
 */
export type ForeseenCurve = { pressure_Pa(flow_m3_s: number): number; freeFlow_m3_s: number };

/** How the rig would run: flow [m3/s], the blower's pressure [Pa] and the row one would write down, suction without its minus. */
export type Expected = { flow_m3_s: number; pressure_Pa: number; row: Row };

const TOLERANCE = 1e-9;
const MOST_DOUBLINGS = 60;

/** Smallest doubled value of `x` for which `f` is above zero; null where there is none. */
function above(f: (x: number) => number, x: number): number | null {
  let at = x;
  for (let i = 0; i < MOST_DOUBLINGS; i++, at *= 2) if (f(at) > 0) return at;
  return null;
}

/** Root of a rising function from zero on; `start` is where the search for its upper end begins. */
function risingRoot(f: (x: number) => number, start: number): number | null {
  const high = above(f, start);
  if (high === null || f(0) > 0) return null;
  return bracketedRoot(f, 0, high, TOLERANCE * high);
}

/**
 * A holed cap on this blower: where its own reading makes both the flow and the pressure, one reading fits the curve.
 * @param hole_m diameter [m]; 0 is a closed cap, the pipe's own a plain end
 * @returns null where nothing fits: a curve without pressure
 * Source: the method's own formulas (`methods/orifice-cap.ts`), solved for the reading.
 */
export function expectedAtHole(bench: Bench, hole_m: number, curve: ForeseenCurve): Expected | null {
  const method = methodNamed(bench.rig.method);
  const shutOff = curve.pressure_Pa(0);
  if (!(shutOff > 0)) return null;
  const rowOf = (reading: number): Row => ({ staticPressure_Pa: reading, orificeDiameter_m: hole_m });
  if (hole_m === 0) return { flow_m3_s: 0, pressure_Pa: shutOff, row: rowOf(shutOff) };
  const runAt = (reading: number) => {
    const row = rowOf(reading);
    const flow_m3_s = method.flow(bench, row);
    return { flow_m3_s, pressure_Pa: (method.pressure ?? fanPressure)(bench, row, flow_m3_s), row };
  };
  const excess = (reading: number): number => {
    const { flow_m3_s, pressure_Pa } = runAt(reading);
    return pressure_Pa - curve.pressure_Pa(flow_m3_s);
  };
  const reading = risingRoot(excess, shutOff);
  return reading === null ? null : runAt(reading);
}

/** What the method shows at a flow, as a field of the row; one point stands for a whole traverse. */
const SIGNAL: Partial<Record<Method, (value: number) => Partial<Row>>> = {
  'conical-inlet': (value) => ({ throatPressure_Pa: value }),
  'bell-mouth': (value) => ({ throatPressure_Pa: value }),
  'orifice-in-pipe': (value) => ({ differentialPressure_Pa: value }),
  'pitot-traverse': (value) => ({ velocityPressures_Pa: [value] }),
  'vane-traverse': (value) => ({ velocities_m_s: [value] }),
};

/**
 * A throttled rig of any other method, at a flow of one's choice.
 * @param flow_m3_s above zero
 * @param hole_m    hole of the plate, where the method has one
 */
export function expectedAtFlow(
  bench: Bench,
  flow_m3_s: number,
  curve: ForeseenCurve,
  hole_m: number | null = null,
): Expected | null {
  const method = methodNamed(bench.rig.method);
  const plate = hole_m === null ? {} : { orificeDiameter_m: hole_m };
  const pressure_Pa = curve.pressure_Pa(flow_m3_s);
  const atZero = fanPressure(bench, { staticPressure_Pa: 0 }, flow_m3_s);
  const row: Row = { staticPressure_Pa: pressure_Pa - atZero, ...plate };
  const signal = SIGNAL[bench.rig.method];
  if (signal === undefined) {
    const { bagVolume_m3 } = bench.rig;
    return bagVolume_m3 == null || flow_m3_s === 0
      ? null
      : { flow_m3_s, pressure_Pa, row: { ...row, fillTime_s: bagVolume_m3 / flow_m3_s } };
  }
  if (flow_m3_s === 0) return { flow_m3_s, pressure_Pa, row: { ...row, ...signal(0) } };
  const value = risingRoot((s) => (s === 0 ? 0 : method.flow(bench, { ...row, ...signal(s) })) - flow_m3_s, 1);
  return value === null ? null : { flow_m3_s, pressure_Pa, row: { ...row, ...signal(value) } };
}

/** Loss of a well rounded or coned end on its velocity pressure [-]. Source: ventilation handbooks (recalled), 0.03–0.15. */
const ROUNDED_END_LOSS = 0.1;

/** Flow with nothing in the way but the test pipe itself [m3/s]: its end, on the outlet side the free blow, and its friction. */
export function unthrottledFlow(bench: Bench, curve: ForeseenCurve): number | null {
  const rounded = bench.rig.method === 'conical-inlet' || bench.rig.method === 'bell-mouth';
  const end = bench.side === 'outlet' ? 1 : rounded ? ROUNDED_END_LOSS : OPEN_END_LOSS;
  const length_m = bench.endToTap_m + bench.tapToBlower_m;
  const excess = (flow: number): number =>
    end * velocityPressure(bench, flow) + pipeFriction(bench, length_m, flow) - curve.pressure_Pa(flow);
  return risingRoot(excess, curve.freeFlow_m3_s / 8);
}
