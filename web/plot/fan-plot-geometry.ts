import type { FanCurve } from '../../src/assessment.ts';
import { fromBase, toBase, unitCalled } from '../../src/units/index.ts';
import { bandBetween, linearScale, pathThrough, type Scale } from './scale.ts';
import { ticksTo } from './ticks.ts';

/** A find on the plot: where it says the blower runs, at run speed and site air. */
export type PlotPoint = {
  flow_m3_s: number;
  totalPressure_Pa: number;
  kind: 'chart' | 'readings' | 'rated-point';
  /** place in the blower's evidence */
  evidence: number;
  key: string;
};

export type PlotFrame = { width: number; height: number; left: number; right: number; top: number; bottom: number };
export type Tick = { at: number; text: number };

export type FanPlotGeometry = {
  curve: string;
  low: string;
  high: string;
  band: string;
  xTicks: Tick[];
  yTicks: Tick[];
  x: Scale;
  y: Scale;
  points: (PlotPoint & { x: number; y: number })[];
};

/** Where finds contradict each other the band may run off the paper; the ruler keeps to this many times what was seen. */
const WIDEST = 2.5;

/** Places a fan curve, its band and the finds on one paper, ruled in the user's units. */
export function fanPlotGeometry(
  curve: FanCurve | null,
  points: readonly PlotPoint[],
  frame: PlotFrame,
  units: { flow: string; pressure: string },
): FanPlotGeometry {
  const flowUnit = unitCalled(units.flow);
  const pressureUnit = unitCalled(units.pressure);
  const flows = [...(curve?.flow_m3_s ?? []), ...points.map((p) => p.flow_m3_s)];
  const seen = Math.max(0, ...points.map((p) => p.totalPressure_Pa));
  const wanted = [...(curve?.high95_Pa ?? []), ...(curve?.totalPressure_Pa ?? [])];
  const pressures = [seen, ...(seen > 0 ? wanted.filter((p) => p <= WIDEST * seen) : wanted)];
  const xValues = ticksTo(fromBase(Math.max(1e-3, ...flows), flowUnit), (frame.width - frame.left) / 78);
  const yValues = ticksTo(
    fromBase(Math.max(1, ...pressures), pressureUnit),
    (frame.height - frame.top - frame.bottom) / 52,
  );
  const x = linearScale([0, toBase(xValues.at(-1) ?? 1, flowUnit)], [frame.left, frame.width - frame.right]);
  const y = linearScale([0, toBase(yValues.at(-1) ?? 1, pressureUnit)], [frame.height - frame.bottom, frame.top]);
  const line = (values: readonly number[]): [number, number][] =>
    (curve?.flow_m3_s ?? []).map((flow, i) => [x.place(flow), y.place(Math.max(0, values[i] ?? 0))]);
  const high = line(curve?.high95_Pa ?? []);
  const low = line(curve?.low95_Pa ?? []);
  return {
    curve: pathThrough(line(curve?.totalPressure_Pa ?? [])),
    low: pathThrough(low),
    high: pathThrough(high),
    band: bandBetween(high, low),
    xTicks: xValues.map((text) => ({ at: x.place(toBase(text, flowUnit)), text })),
    yTicks: yValues.map((text) => ({ at: y.place(toBase(text, pressureUnit)), text })),
    x,
    y,
    points: points.map((p) => ({ ...p, x: x.place(p.flow_m3_s), y: y.place(p.totalPressure_Pa) })),
  };
}
