import { valueAt } from '../axes.ts';
import { toSI, unitOf } from '../check-hints.ts';
import type { AxisHint } from '../hints.ts';
import { trueFractions, type StraightenedChart } from '../straightened-chart.ts';
import type { TracedCurve } from '../trace/trace.ts';

/** A line read on one axis: shares of the frame, and SI values, at even steps along it from left to right. */
export type LineValues = {
  readonly u: readonly number[];
  readonly v: readonly number[];
  /** m³/s */
  readonly flow: readonly number[];
  /** Pa, W or a fraction */
  readonly value: readonly number[];
};

const POINTS = 48;

/** Reads a line on an axis. @param axis another than the flow axis, of a known unit, else RangeError */
export function lineValues(chart: StraightenedChart, line: TracedCurve, axis: AxisHint): LineValues {
  const flowUnit = unitOf(chart.flow);
  const unit = unitOf(axis);
  if (!flowUnit || !unit) throw new RangeError(`units: expected known ones, received ${chart.flow.unit}, ${axis.unit}`);
  const { x, y } = line.trace;
  const out = { u: [] as number[], v: [] as number[], flow: [] as number[], value: [] as number[] };
  const within = (f: number) => Math.min(1, Math.max(0, f));
  for (let k = 0; k < POINTS; k++) {
    const i = Math.round((k * (x.length - 1)) / (POINTS - 1));
    const [u, v] = trueFractions(chart, axis.id, x[i]!, y[i]!).map(within) as [number, number];
    out.u.push(u);
    out.v.push(v);
    out.flow.push(toSI(valueAt(chart.flow, u), flowUnit));
    out.value.push(toSI(valueAt(axis, v), unit));
  }
  return out;
}

/** Value of a line at a flow, between its points; null beyond its ends. Source: definition. */
export function valueOf({ flow, value }: LineValues, q: number): number | null {
  for (let i = 1; i < flow.length; i++) {
    const [a, b] = [flow[i - 1]!, flow[i]!];
    if (q < Math.min(a, b) || q > Math.max(a, b)) continue;
    return a === b ? value[i]! : value[i - 1]! + ((value[i]! - value[i - 1]!) * (q - a)) / (b - a);
  }
  return null;
}
