import type { ChartPoints } from './base-curve.ts';
import { printedPower, type PowerObservation, type PressureObservation } from './observation.ts';

/** A chart already brought to run speed and site air. */
export type ChartCurve = {
  kind: 'static' | 'total';
  pressure: ChartPoints;
  shaftPower: ChartPoints | null;
  /** relative standard deviations of its tolerance */
  deviation: { flow: number; pressure: number; shaftPower: number };
  /** charts of one group share one error (one photo, one sheet) */
  group: string;
  /** |ln(chart speed / run speed)|: of one group the nearest is believed */
  speedDistance: number;
  /** JSON Pointer of the evidence */
  path: string;
};

/** A chart's shape is doubted by this share of its pressure tolerance, over and above the tolerance itself. Estimated. */
export const SHAPE_SHARE = 0.4;
const SECOND_CHART_POINTS = 15;

/** Of the most trusted group the chart nearest in speed; independent of the order of evidence. */
export function leadingChart(charts: readonly ChartCurve[]): ChartCurve | null {
  const rank = (c: ChartCurve) =>
    [c.deviation.pressure, c.speedDistance, -c.pressure.length, JSON.stringify(c.pressure)] as const;
  return [...charts].sort((a, b) => compare(rank(a), rank(b)))[0] ?? null;
}

function compare(a: readonly (number | string)[], b: readonly (number | string)[]): number {
  for (let i = 0; i < a.length; i++) {
    if (a[i]! < b[i]!) return -1;
    if (a[i]! > b[i]!) return 1;
  }
  return 0;
}

/** A further chart as observations that share its tolerance. */
export function asObservations(chart: ChartCurve): { pressures: PressureObservation[]; powers: PowerObservation[] } {
  const top = Math.max(...chart.pressure.map((p) => p[1]));
  const { flow, pressure, shaftPower } = chart.deviation;
  const flowError = (q: number) => ({ error: `${chart.group}/flow`, flow_m3_s: flow * q, value: 0 });
  return {
    pressures: thinned(chart.pressure).map(([q, p]) => ({
      kind: chart.kind,
      flow_m3_s: q,
      pressure_Pa: p,
      shared: [flowError(q), { error: `${chart.group}/pressure`, flow_m3_s: 0, value: pressure * p }],
      own: [{ flow_m3_s: 0, value: SHAPE_SHARE * pressure * top }],
      path: chart.path,
    })),
    powers: thinned(chart.shaftPower ?? [])
      .filter(([, w]) => w > 0)
      .map(([q, w]) =>
        printedPower({
          flow_m3_s: q,
          shaftPower_W: w,
          shared: [flowError(q), { error: `${chart.group}/power`, flow_m3_s: 0, value: shaftPower }],
          own: [{ flow_m3_s: 0, value: SHAPE_SHARE * shaftPower }],
          path: chart.path,
        }),
      ),
  };
}

function thinned<T>(points: readonly T[]): T[] {
  if (points.length <= SECOND_CHART_POINTS) return [...points];
  return Array.from(
    { length: SECOND_CHART_POINTS },
    (_, i) => points[Math.round((i * (points.length - 1)) / (SECOND_CHART_POINTS - 1))]!,
  );
}
