import type { RatedPointEvidence } from '../job/types.ts';
import { printedPower, type PowerObservation, type PressureObservation } from '../fan/observation.ts';
import type { Warning } from '../issues/result.ts';
import { RATED_POINT_SD } from '../fan/tolerance.ts';
import { CHART_AIR_DENSITY, factorsTo, type RunState } from './run-state.ts';

/**
 * A plate's rated point as one observation with a wide doubt. Flow 0 is shut-off, pressure 0 free delivery.
 * The points of one plate share the doubt of that plate.
 */
export function ratedPoint(
  point: RatedPointEvidence,
  run: RunState,
  path: string,
): { pressure: PressureObservation; power: PowerObservation | null; warnings: Warning[] } {
  const factors = factorsTo(run, point.speed_rpm ?? null, point.airDensity_kg_m3 ?? CHART_AIR_DENSITY);
  const flow = point.flow_m3_s * factors.flow;
  const pressure = point.pressure_Pa * factors.pressure;
  const plate = point.photoId ? `photo:${point.photoId}` : 'plate';
  const warnings: Warning[] =
    point.pressureKind == null
      ? [
          {
            code: 'pressure-kind-assumed',
            text: 'The plate does not say static or total pressure: static is taken, the lower of the two.',
            path: `${path}/pressureKind`,
          },
        ]
      : [];
  // half of the variance is the plate's, shared by its points, half the point's own
  const half = Math.SQRT1_2;
  const flowDoubt = RATED_POINT_SD.flow * flow * half;
  const pressureDoubt = RATED_POINT_SD.pressure * pressure * half;
  return {
    pressure: {
      kind: point.pressureKind ?? 'static',
      flow_m3_s: flow,
      pressure_Pa: pressure,
      shared: [
        { error: `${plate}/flow`, flow_m3_s: flowDoubt, value: 0 },
        { error: `${plate}/pressure`, flow_m3_s: 0, value: pressureDoubt },
      ],
      own: [
        { flow_m3_s: flowDoubt, value: 0 },
        { flow_m3_s: 0, value: pressureDoubt },
      ],
      path,
    },
    power:
      point.shaftPower_W == null
        ? null
        : printedPower({
            flow_m3_s: flow,
            shaftPower_W: point.shaftPower_W * factors.power,
            shared: [],
            own: [{ flow_m3_s: 0, value: RATED_POINT_SD.shaftPower }],
            path,
          }),
    warnings,
  };
}
