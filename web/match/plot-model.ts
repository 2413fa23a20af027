import type { Case, Interval, OperatingPoint } from '../../src/assessment.ts';
import { fromBase, unitCalled } from '../../src/units/index.ts';
import type { PlanView } from './plans.ts';
import { smooth, smoothSquare } from './smooth.ts';

export type Curve = { x: number[]; y: number[] };
export type Spot = { x: number; y: number };
export type Bar = { state: 'clean' | 'loaded'; low: number; high: number; middle: number };

/** Everything the overlay plot shows, already in the units of its axes (flow, pressure, percent of plate). */
export type PlotModel = {
  flowMax: number;
  pressureMax: number;
  fan: Curve & { low: number[]; high: number[] };
  clean: Curve | null;
  loaded: Curve | null;
  others: { plan: string; curve: Curve; at: Spot | null }[];
  points: { clean: Spot | null; loaded: Spot | null; unstable: Spot[] };
  need: number | null;
  bars: Bar[];
  motor: {
    curve: Curve;
    low: number[];
    high: number[];
    max: number;
    clean: Spot | null;
    loaded: Spot | null;
    allOpen: Spot | null;
  } | null;
};

export type PlotUnits = { flow: string; pressure: string };

/** More than this many other plans would be a tangle: the worst ones are drawn, the plan row has them all. */
const MOST_OTHERS = 3;

/** Collects one blower's curves and points around the chosen gate plan. Null where no case has a curve. */
export function plotModel(plans: readonly PlanView[], chosen: PlanView, units: PlotUnits): PlotModel | null {
  const flow = (si: number) => fromBase(si, unitCalled(units.flow));
  const pressure = (si: number) => fromBase(si, unitCalled(units.pressure));
  const fanCase = chosen.loaded ?? chosen.clean;
  if (!fanCase || fanCase.fanCurve.flow_m3_s.length === 0) return null;
  const system = (one: Case | null): Curve | null =>
    one && one.systemCurve.flow_m3_s.length > 0
      ? smoothSquare({ x: one.systemCurve.flow_m3_s.map(flow), y: one.systemCurve.totalPressure_Pa.map(pressure) })
      : null;
  const spot = (point: OperatingPoint | null | undefined): Spot | null =>
    point ? { x: flow(point.flow_m3_s), y: pressure(point.totalPressure_Pa) } : null;
  const x = fanCase.fanCurve.flow_m3_s.map(flow);
  const along = (values_Pa: number[]) => smooth({ x, y: values_Pa.map(pressure) });
  const middle = along(fanCase.fanCurve.totalPressure_Pa);
  const fan = { ...middle, low: along(fanCase.fanCurve.low95_Pa).y, high: along(fanCase.fanCurve.high95_Pa).y };
  const others = [...plans]
    .filter((plan) => plan !== chosen)
    .sort((a, b) => a.probability - b.probability)
    .slice(0, MOST_OTHERS)
    .flatMap((plan) => {
      const one = plan.loaded ?? plan.clean;
      const curve = system(one);
      return curve ? [{ plan: plan.name, curve, at: spot(one?.operatingPoint) }] : [];
    });
  const open = planWithMostOpen(plans);
  const bars = barsOf(chosen, flow);
  const needed = needOf(chosen.worst);
  const need = needed === null ? null : flow(needed);
  const seen = [chosen.clean, chosen.loaded, open?.clean ?? null].flatMap((one) =>
    one?.operatingPoint ? [flow(one.operatingPoint.flow_m3_s)] : [],
  );
  const ends = [
    ...seen,
    ...bars.map((bar) => bar.high),
    need ?? 0,
    ...others.flatMap((other) => (other.at ? [other.at.x] : [])),
  ];
  const freeDelivery = Math.max(...fan.x);
  const widest = Math.max(...ends, freeDelivery * 0.1);
  const flowMax = Math.max(widest * 1.06, Math.min(freeDelivery, widest * 1.3));
  const inSight = (values: number[]) => values.filter((_, i) => fan.x[i]! <= flowMax);
  return {
    flowMax,
    pressureMax: Math.max(...inSight(fan.high), ...inSight(fan.y)) * 1.1,
    fan,
    clean: system(chosen.clean),
    loaded: system(chosen.loaded),
    others,
    points: {
      clean: spot(chosen.clean?.operatingPoint),
      loaded: spot(chosen.loaded?.operatingPoint),
      unstable: fanCase.otherOperatingPoints.filter((point) => !point.stable).map((point) => spot(point)!),
    },
    need,
    bars,
    motor: motorOf(chosen, open, flow),
  };
}

/** What the open machines need together; null where one of them has not been asked. */
export function needOf(one: Case): number | null {
  const open = one.pickups.filter((pickup) => pickup.open);
  if (open.length === 0 || open.some((pickup) => pickup.requiredFlow_m3_s === null)) return null;
  return open.reduce((sum, pickup) => sum + pickup.requiredFlow_m3_s!, 0);
}

/** One bar per filter state: the flow of the one open machine, or of all open ones together. */
function barsOf(chosen: PlanView, flow: (si: number) => number): Bar[] {
  return [chosen.clean, chosen.loaded].flatMap((one) => {
    if (!one?.operatingPoint) return [];
    const only = chosen.open.length === 1 ? one.pickups.find((pickup) => pickup.open) : undefined;
    const [low, high]: Interval = only ? only.flow95_m3_s : one.operatingPoint.interval95.flow_m3_s;
    const middle = only ? only.flow_m3_s : one.operatingPoint.flow_m3_s;
    return [{ state: one.filterState, low: flow(low), high: flow(high), middle: flow(middle) }];
  });
}

const planWithMostOpen = (plans: readonly PlanView[]): PlanView | null =>
  plans.reduce<PlanView | null>((most, plan) => (most && most.open.length >= plan.open.length ? most : plan), null);

/** Motor load over flow in percent of the plate: the wheel's power, raised by the drive's loss as at the running point. */
function motorOf(chosen: PlanView, open: PlanView | null, flow: (si: number) => number): PlotModel['motor'] {
  const one = chosen.clean ?? chosen.loaded;
  const point = one?.operatingPoint;
  if (!one || !point?.shaftPower_W || one.motor.loadFraction === null) return null;
  const { fanCurve } = one;
  const percent = (100 * one.motor.loadFraction) / point.shaftPower_W;
  const at = (other: Case | null | undefined): Spot | null =>
    other?.operatingPoint && other.motor.loadFraction !== null
      ? { x: flow(other.operatingPoint.flow_m3_s), y: 100 * other.motor.loadFraction }
      : null;
  const spots = {
    clean: at(chosen.clean),
    loaded: at(chosen.loaded),
    allOpen: open && open !== chosen && open.open.length > chosen.open.length ? at(open.clean) : null,
  };
  const x = fanCurve.flow_m3_s.map(flow);
  const along = (power_W: number[]) => smooth({ x, y: power_W.map((power) => power * percent) });
  const top = Math.max(100, ...Object.values(spots).map((spot) => spot?.y ?? 0));
  return {
    curve: along(fanCurve.shaftPower_W),
    low: along(fanCurve.shaftPowerLow95_W).y,
    high: along(fanCurve.shaftPowerHigh95_W).y,
    max: top * 1.24,
    ...spots,
  };
}

/** Reads a curve at a flow, straight between its points; null outside it. */
export function readCurve({ x, y }: Curve, at: number): number | null {
  for (let i = 1; i < x.length; i++) {
    const [a, b] = [x[i - 1]!, x[i]!];
    if (at < Math.min(a, b) || at > Math.max(a, b)) continue;
    return y[i - 1]! + ((y[i]! - y[i - 1]!) * (at - a)) / (b - a || 1);
  }
  return null;
}
