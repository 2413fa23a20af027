import { impossibleInside, largeHead, measuringArea } from '../measuring-place.ts';
import type { Method } from './method.ts';
import { mean } from './pitot-traverse.ts';

/** Air speeds at points of equal weight; their mean gives the flow. */
export const vaneTraverse: Method = {
  method: 'vane-traverse',
  label: 'vane anemometer',
  standard: 'ISO 3966, positions; mean velocity × area',
  source: 'ISO 3966: mean of the point velocities × area, points of equal weight',
  help: 'Hold the wheel square to the air at each mark. In a pipe less than five times its own width it blocks the air and reads wrong.',
  rigFields: [
    'side',
    'pipeDiameter_m',
    'width_m',
    'height_m',
    'hubDiameter_m',
    'anemometerDiameter_m',
    'straightBefore_m',
    'straightAfter_m',
    'lengthToTap_m',
    'lengthTapToBlower_m',
    'surface',
  ],
  rowFields: ['velocities_m_s'],
  rigNeeds: [['pipeDiameter_m'], ['width_m', 'height_m']],
  flow: (bench, row) => bench.flowFactor * measuringArea(bench) * mean(row.velocities_m_s!),
  impossibleRig: (rig, path) => [
    ...impossibleInside(rig, 'hubDiameter_m', 'A hub', path),
    ...impossibleInside(rig, 'anemometerDiameter_m', 'An anemometer', path),
  ],
  rigDoubtful: largeHead,
};
