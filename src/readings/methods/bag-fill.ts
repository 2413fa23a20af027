import { pointer } from '../../issues/result.ts';
import type { Method } from './method.ts';

/** A bag that fills faster says little: reaction time and the last limp corner count too much [s]. Source: bag-test guides, "useless below 5 s". */
const SHORTEST_FILL_s = 5;

/** A bag of known volume on the air's way out, timed. */
export const bagFill: Method = {
  method: 'bag-fill',
  label: 'filling a bag',
  standard: 'volume ÷ time',
  source: 'definition',
  help: 'Tie a light bag of known size over the outlet and time it until it is just full. Under 5 seconds sew a larger one.',
  rigFields: ['side', 'pipeDiameter_m', 'bagVolume_m3', 'lengthToTap_m', 'lengthTapToBlower_m', 'surface'],
  rowFields: ['fillTime_s'],
  rigNeeds: [['pipeDiameter_m', 'bagVolume_m3']],
  flow: (bench, row) => (bench.flowFactor * bench.rig.bagVolume_m3!) / row.fillTime_s!,
  doubtful(_bench, row, path) {
    if (row.fillTime_s! >= SHORTEST_FILL_s) return [];
    return [
      {
        code: 'bag-too-fast',
        path: path + pointer('fillTime_s'),
        text: `The bag was full in ${row.fillTime_s} s: below ${SHORTEST_FILL_s} s the flow can hardly be told. Use a larger bag.`,
      },
    ];
  },
};
