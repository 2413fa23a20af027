import type { ChartEvidence } from '../job/types.ts';
import type { ChartPoints } from '../fan/base-curve.ts';
import type { ChartCurve } from '../fan/estimate.ts';
import type { Warning } from '../issues/result.ts';
import { shapePreservingCubic } from '../numeric/interpolate.ts';
import { UNKNOWN_GRADE, chartDeviation } from '../fan/tolerance.ts';
import { CHART_AIR_DENSITY, factorsTo, type RunState } from './run-state.ts';

/** A chart that stays below these shows no blower, but a wrong unit. */
const LEAST_PRESSURE_Pa = 0.01;
const LEAST_FLOW_m3_s = 1e-5;

/** Below this share of its best value an efficiency says nothing of the power: flow times pressure over it runs to 0/0. */
const USEFUL_EFFICIENCY = 0.05;

/** A chart brought to run speed and site air, with the tolerance of its grade. */
export function chartCurve(
  chart: ChartEvidence,
  run: RunState,
  path: string,
): { curve: ChartCurve | null; warnings: Warning[] } {
  const warnings: Warning[] = [];
  if (chart.speed_rpm == null)
    warnings.push({
      code: 'speed-assumed',
      text: 'The chart names no speed: it is taken to hold at the speed the wheel will run at.',
      path: `${path}/speed_rpm`,
    });
  if (chart.airDensity_kg_m3 == null)
    warnings.push({
      code: 'density-assumed',
      text: `The chart names no air density: standard air of ${CHART_AIR_DENSITY} kg/m³ is taken.`,
      path: `${path}/airDensity_kg_m3`,
    });
  if (chart.pressureKind == null)
    warnings.push({
      code: 'pressure-kind-assumed',
      text: 'The chart does not say static or total pressure: static is taken, the lower of the two.',
      path: `${path}/pressureKind`,
    });

  const kind = chart.pressureKind ?? 'static';
  const top = Math.max(...chart.pressure.map((p) => p[1]));
  const reach = Math.max(...chart.pressure.map((p) => p[0]));
  if (top < LEAST_PRESSURE_Pa || reach < LEAST_FLOW_m3_s) {
    const text = 'This chart never rises above nothing: no blower can be read from it. Check its units.';
    return { curve: null, warnings: [...warnings, { code: 'chart-unusable', text, path }] };
  }
  const factors = factorsTo(run, chart.speed_rpm ?? null, chart.airDensity_kg_m3 ?? CHART_AIR_DENSITY);
  const printed = chart.shaftPower?.filter(([, watts]) => watts > 0) ?? [];
  const power = printed.length > 0 ? printed : powerFromEfficiency(chart);
  return {
    curve: {
      kind,
      pressure: chart.pressure.map(([q, p]) => [q * factors.flow, p * factors.pressure] as const),
      shaftPower: power && power.map(([q, w]) => [q * factors.flow, w * factors.power] as const),
      deviation: chartDeviation(chart.accuracyGrade ?? UNKNOWN_GRADE),
      group: chart.photoId ? `photo:${chart.photoId}` : path,
      speedDistance: Math.abs(Math.log(factors.flow)),
      path,
    },
    warnings,
  };
}

/** Shaft power = flow · pressure / efficiency at the printed efficiency points; the efficiency follows the chart's pressure kind. */
function powerFromEfficiency(chart: ChartEvidence): ChartPoints | null {
  if (!chart.efficiency?.length) return null;
  const pressure = [...chart.pressure].sort((a, b) => a[0] - b[0]);
  const best = Math.max(...chart.efficiency.map((e) => e[1]));
  const points = chart.efficiency
    .filter(([q, e]) => q > 0 && e > USEFUL_EFFICIENCY * best)
    .map(([q, e]) => [q, (q * pressureAt(pressure, q)) / e] as const)
    .filter(([, w]) => w > 0);
  return points.length > 1 ? points : null;
}

function pressureAt(points: ChartPoints, flow: number): number {
  return shapePreservingCubic(points).value(flow);
}
