import { impossibleInside, measuringArea } from '../measuring-place.ts';
import { signal } from '../pressures.ts';
import type { Method } from './method.ts';

/** Air speed from a velocity pressure [m/s], √(2·p/ρ). Source: ISO 3966, calibration factor 1; compressibility 0.09 % at 20 m/s left out. */
export const pitotVelocity = (velocityPressure_Pa: number, density_kg_m3: number): number =>
  Math.sqrt((2 * signal(velocityPressure_Pa)) / density_kg_m3);

/** The arithmetic mean; of velocities, never of pressures. */
export const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Velocity pressures at points of equal weight; the mean of their roots gives the flow. */
export const pitotTraverse: Method = {
  method: 'pitot-traverse',
  label: 'pitot tube',
  standard: 'ISO 3966',
  source: 'ISO 3966: mean of the point velocities × area, points of equal weight',
  help: 'Push the tube to each mark and write down every reading. The program takes the mean of the speeds, not of the pressures.',
  rigFields: [
    'side',
    'pipeDiameter_m',
    'width_m',
    'height_m',
    'hubDiameter_m',
    'straightBefore_m',
    'straightAfter_m',
    'lengthToTap_m',
    'lengthTapToBlower_m',
    'surface',
  ],
  rowFields: ['velocityPressures_Pa'],
  rigNeeds: [['pipeDiameter_m'], ['width_m', 'height_m']],
  flow(bench, row) {
    const velocities = row.velocityPressures_Pa!.map((p) => pitotVelocity(p, bench.air.density_kg_m3));
    return bench.flowFactor * measuringArea(bench) * mean(velocities);
  },
  impossibleRig: (rig, path) => impossibleInside(rig, 'hubDiameter_m', 'A hub', path),
};
