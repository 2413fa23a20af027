import { pointer } from '../../issues/result.ts';
import type { Bench } from '../bench.ts';
import { signal } from '../pressures.ts';
import type { Row } from '../schema.ts';
import type { Method } from './method.ts';

/** From here on the coefficient stands still at 0.96; below the lower end it is extrapolated. Source: ISO 5801 (recalled). */
const STEADY_REYNOLDS = 300_000;
const LEAST_REYNOLDS = 20_000;

/**
 * Flow coefficient of a 60° conical inlet [-], compressibility included: 1 − 0.5·Re^−0.2, 0.96 from Re 300,000 on.
 * @param reynolds on the throat diameter [-]; below 1 taken as 1
 * Source: ISO 5801, conical inlet (recalled; both branches meet at Re 300,000).
 */
export const conicalInletCoefficient = (reynolds: number): number =>
  reynolds >= STEADY_REYNOLDS ? 0.96 : 1 - 0.5 * Math.max(1, reynolds) ** -0.2;

/** Reynolds number of the throat [-] at a flow [m3/s]. */
const throatReynolds = (bench: Bench, flow_m3_s: number): number =>
  (4 * flow_m3_s * bench.air.density_kg_m3) / (Math.PI * bench.rig.throatDiameter_m! * bench.air.viscosity_Pa_s);

/** Flow through the throat [m3/s] were the coefficient 1. */
export function idealThroatFlow(bench: Bench, row: Row): number {
  const area_m2 = (Math.PI / 4) * bench.rig.throatDiameter_m! ** 2;
  return area_m2 * Math.sqrt((2 * signal(row.throatPressure_Pa!)) / bench.air.density_kg_m3);
}

const ROUNDS = 60;

/** The coefficient depends on the flow a little, so a few rounds settle it. */
function coefficientAt(bench: Bench, ideal_m3_s: number): number {
  let coefficient = 0.95;
  for (let round = 0; round < ROUNDS; round++) {
    const next = conicalInletCoefficient(throatReynolds(bench, coefficient * ideal_m3_s));
    if (Math.abs(next - coefficient) < 1e-15) return next;
    coefficient = next;
  }
  return coefficient;
}

/** A 60° cone on the free end; the depression in its throat gives the flow. */
export const conicalInlet: Method = {
  method: 'conical-inlet',
  label: 'cone on the intake',
  standard: 'ISO 5801, conical inlet',
  source: 'ISO 5801: α = 1 − 0.5·Re^−0.2, 0.96 from Re 300,000',
  help: 'A 60° cone, opening twice the throat, taps half a throat behind it. Read the throat and the tap.',
  rigFields: ['side', 'throatDiameter_m', 'pipeDiameter_m', 'lengthToTap_m', 'lengthTapToBlower_m', 'surface'],
  rowFields: ['throatPressure_Pa'],
  rigNeeds: [['throatDiameter_m']],
  flow(bench, row) {
    const ideal = idealThroatFlow(bench, row);
    return ideal === 0 ? 0 : bench.flowFactor * coefficientAt(bench, ideal) * ideal;
  },
  doubtful(bench, row, path) {
    const reynolds = throatReynolds(bench, this.flow(bench, row));
    if (reynolds === 0 || reynolds >= LEAST_REYNOLDS) return [];
    return [
      {
        code: 'outside-standard',
        path: path + pointer('throatPressure_Pa'),
        text: `The air in the cone is too slow for its formula (Reynolds number ${Math.round(reynolds)}, 20,000 needed): the flow is less sure.`,
      },
    ];
  },
};
