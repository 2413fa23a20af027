import { valueAt, type AxisScale } from './axes.ts';
import { toSI, unitOf } from './check-hints.ts';
import type { AxisHint } from './hints.ts';
import type { CurveReading } from './reading.ts';
import { fromSheet } from './sheet.ts';
import { trueFractions, type StraightenedChart } from './straightened-chart.ts';
import type { Trace } from './trace/stroke-centre.ts';

/** Every so many points of a trace are answered: one in about eight sheet pixels. */
const EVERY = 3;

/** A trace as SI values sorted by flow, one value a flow, each with its place in the photo. */
export function curvePoints(
  chart: StraightenedChart,
  trace: Trace,
  axis: AxisHint,
): Pick<CurveReading, 'points' | 'points_px'> {
  const flowUnit = unitOf(chart.flow);
  const valueUnit = unitOf(axis);
  if (!flowUnit || !valueUnit)
    throw new RangeError(`units: expected known ones, received ${chart.flow.unit} and ${axis.unit}`);
  const last = trace.x.length - 1;
  const rows: { flow: number; value: number; px: readonly [number, number] }[] = [];
  for (let i = 0; i <= last; i += i === last ? 1 : Math.min(EVERY, last - i)) {
    const [fu, fv] = trueFractions(chart, axis.id, trace.x[i]!, trace.y[i]!);
    const [u, v] = fromSheet(chart.sheet, trace.x[i]!, trace.y[i]!);
    rows.push({
      flow: toSI(onAxis(chart.flow, fu), flowUnit),
      value: toSI(onAxis(axis, fv), valueUnit),
      px: chart.map.toPhoto(u, v),
    });
  }
  rows.sort((a, b) => a.flow - b.flow);
  const apart = 1e-7 * (rows.at(-1)!.flow - rows[0]!.flow);
  const kept = rows.filter((row, i) => i === 0 || row.flow - rows[i - 1]!.flow > apart);
  return { points: kept.map((r) => [r.flow, r.value]), points_px: kept.map((r) => [r.px[0], r.px[1]]) };
}

/** Nothing is read beyond the frame: there the last bit of a stroke only met the frame's line. */
const onAxis = (axis: AxisScale, fraction: number): number => valueAt(axis, Math.min(1, Math.max(0, fraction)));
