import { curvePoints } from './curve-points.ts';
import { expectedError } from './curve-error.ts';
import { curveDoubts, type Doubt } from './doubts.ts';
import type { AxisHint, AxisQuantity } from './hints.ts';
import type { ChartReading, CurveReading } from './reading.ts';
import { stepSureness, sureness } from './sureness.ts';
import { trueFractions, type StraightenedChart } from './straightened-chart.ts';
import type { TracedCurve } from './trace/trace.ts';

/** A traced curve and what it shows. `path` is where in hints or answer its doubts belong. */
export type NamedCurve = {
  readonly id: string;
  readonly curve: TracedCurve;
  readonly yAxis: string;
  readonly quantity: AxisQuantity;
  readonly speed_rpm: number | null;
  readonly path: string;
  readonly doubts: readonly Doubt[];
};

/** The curves in SI units, each with all doubts about it. @param axes those of the curves among them, else TypeError */
export function curvesInSI(
  chart: StraightenedChart,
  axes: readonly AxisHint[],
  named: readonly NamedCurve[],
): { curves: CurveReading[]; doubts: Doubt[] } {
  const all: Doubt[] = [];
  const curves = named.map(({ id, curve, yAxis, quantity, speed_rpm, path, doubts }): CurveReading => {
    const toFraction = (x: number, y: number) => trueFractions(chart, yAxis, x, y);
    const own = [...doubts, ...curveDoubts(chart.sheet, curve, toFraction, chart.flow, path, quantity)];
    all.push(...own);
    const axis = axes.find((a) => a.id === yAxis)!;
    return {
      id,
      yAxis,
      quantity,
      speed_rpm,
      ...curvePoints(chart, curve.trace, axis),
      expectedError: expectedError(chart, yAxis, curve),
      confidence: stepSureness(own),
    };
  });
  return { curves, doubts: all };
}

/** The answer. @param doubtsOfAxis by the axis's index; those about frame and curves beside them */
export function putTogether(
  chart: StraightenedChart,
  axes: readonly AxisHint[],
  curves: readonly CurveReading[],
  doubtsOfAxis: (axis: AxisHint, index: number) => readonly Doubt[],
  doubts: readonly Doubt[],
): ChartReading {
  const ofAxes = axes.map(doubtsOfAxis);
  const all = [...doubts, ...ofAxes.flat()];
  return {
    frameCorners_px: chart.frame.corners.map(([x, y]) => [x, y]),
    axes: axes.map(({ id, quantity, unit, scale, min, max }, i) => ({
      id,
      quantity,
      unit,
      scale,
      min,
      max,
      confidence: stepSureness(ofAxes[i]!),
    })),
    curves: [...curves],
    confidence: sureness({ axes, curves }, all),
    warnings: all.map((d) => d.warning),
  };
}
