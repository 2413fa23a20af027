import { idealThroatFlow } from './conical-inlet.ts';
import type { Method } from './method.ts';

/** Flow coefficient of a well rounded inlet [-]. Source: ISO 5801 and BS 848-1 (recalled), 0.98–0.995. */
export const BELL_MOUTH_COEFFICIENT = 0.99;

/** A rounded inlet; the depression in its throat gives the flow. */
export const bellMouth: Method = {
  method: 'bell-mouth',
  label: 'bell-mouth on the intake',
  standard: 'ISO 5801, bell-mouth (inlet nozzle)',
  source: 'ISO 5801 and BS 848-1 (recalled): coefficient 0.98–0.995',
  help: 'A rounded mouth, radius a quarter of the throat or more. Read the throat and the tap.',
  rigFields: ['side', 'throatDiameter_m', 'pipeDiameter_m', 'lengthToTap_m', 'lengthTapToBlower_m', 'surface'],
  rowFields: ['throatPressure_Pa'],
  rigNeeds: [['throatDiameter_m']],
  flow: (bench, row) => bench.flowFactor * BELL_MOUTH_COEFFICIENT * idealThroatFlow(bench, row),
};
