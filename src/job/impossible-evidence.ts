import { pointer } from '../issues/result.ts';
import type { Issue } from '../issues/result.ts';
import { checkReadings } from '../readings/index.ts';
import type { ChartEvidence, Evidence, RatedPointEvidence } from './types.ts';

type Point = readonly [flow_m3_s: number, value: number];

/** Points of one curve with two values at one flow: a fan has one pressure at a flow. */
function twoValuesAtOneFlow(points: readonly Point[], path: string, what: string): Issue[] {
  const seen = new Map<number, number>();
  for (const [index, [flow, value]] of points.entries()) {
    const before = seen.get(flow);
    if (before !== undefined && before !== value) {
      const message = `The ${what} curve has two values at ${flow} m3/s, ${before} and ${value}: keep one.`;
      return [{ code: 'curve-not-a-function', path: path + pointer(index), message }];
    }
    seen.set(flow, value);
  }
  return [];
}

function outside(points: readonly Point[] | null | undefined, path: string, most: number, sentence: string): Issue[] {
  return (points ?? []).flatMap(([, value], index) =>
    value < 0 || value > most
      ? [{ code: 'out-of-range' as const, path: path + pointer(index, 1), message: `${sentence}; ${value} was given.` }]
      : [],
  );
}

function impossiblePressures(chart: ChartEvidence, path: string): Issue[] {
  const flows = new Set(chart.pressure.map(([flow]) => flow));
  if (flows.size < 2) {
    return [{ code: 'contradiction', path, message: 'A pressure curve needs points at two different flows or more.' }];
  }
  return chart.pressure.some(([, pressure]) => pressure > 0)
    ? []
    : [
        {
          code: 'contradiction',
          path,
          message: 'No point of the pressure curve is above zero: such a blower moves no air.',
        },
      ];
}

function impossibleChart(chart: ChartEvidence, path: string): Issue[] {
  const [pressure, power, efficiency] = ['pressure', 'shaftPower', 'efficiency'].map((key) => path + pointer(key)) as [
    string,
    string,
    string,
  ];
  return [
    ...impossiblePressures(chart, pressure),
    ...twoValuesAtOneFlow(chart.pressure, pressure, 'pressure'),
    ...twoValuesAtOneFlow(chart.shaftPower ?? [], power, 'shaft power'),
    ...twoValuesAtOneFlow(chart.efficiency ?? [], efficiency, 'efficiency'),
    ...outside(chart.shaftPower, power, Infinity, 'Shaft power must be 0 watts or more'),
    ...outside(chart.efficiency, efficiency, 1, 'Efficiency is a fraction from 0 to 1, like 0.62 for 62 %'),
  ];
}

function impossibleRatedPoint(point: RatedPointEvidence, path: string): Issue[] {
  if (point.flow_m3_s > 0 || point.pressure_Pa > 0) return [];
  return [
    {
      code: 'contradiction',
      path,
      message: 'A rated point with neither flow nor pressure says nothing: give one of them.',
    },
  ];
}

/**
 * What one piece of evidence claims and cannot be.
 * @param evidence  chart, readings, rated point or wheel, understood already
 * @param path      JSON Pointer of it in the document
 */
export function impossibleEvidence(evidence: Evidence, path: string): Issue[] {
  switch (evidence.kind) {
    case 'chart':
      return impossibleChart(evidence, path);
    case 'rated-point':
      return impossibleRatedPoint(evidence, path);
    case 'readings':
      return checkReadings(evidence, path);
    case 'wheel':
      return [];
  }
}
