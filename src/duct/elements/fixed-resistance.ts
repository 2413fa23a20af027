import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';
import { MEASURED_DOUBT, type ElementKind } from './element.ts';
import { densityCorrection } from './density-correction.ts';

/** Fields of a resistance somebody measured: pressure [Pa] at a flow [m3/s], and the exponent of the flow [-]. */
export const FixedResistance = z.strictObject({
  kind: z.literal('fixed-resistance'),
  flow_m3_s: positive('flow of the test', 'flow'),
  pressure_Pa: nonNegative('pressure lost there', 'pressure'),
  exponent: between(
    0.5,
    3,
    'exponent',
    undefined,
    '2 for anything that chokes or turns the air, 1 for cloth and paper',
  ).nullish(),
  airDensity_kg_m3: between(0.1, 5, 'air density of the test', 'density').nullish(),
  doubt: doubt(),
});

/** Most things that resist air (holes, bends, grids, machines) lose with the square of the flow. */
const USUAL_EXPONENT = 2;

/** Measured resistance: pressure·(Q/flow)^exponent, by definition of the job contract. */
export const fixedResistanceKind: ElementKind<typeof FixedResistance> = {
  kind: 'fixed-resistance',
  label: 'measured resistance',
  fields: FixedResistance,
  losses: ({ flow_m3_s, pressure_Pa, exponent, airDensity_kg_m3, doubt }, { air }) => {
    const n = exponent ?? USUAL_EXPONENT;
    return [
      {
        law: 'power',
        flow_m3_s,
        pressure_Pa: pressure_Pa * densityCorrection(air.density_kg_m3, airDensity_kg_m3, n),
        exponent: n,
        doubt: { kind: 'fixed-resistance', sd: doubt ?? MEASURED_DOUBT },
      },
    ];
  },
  part: () => 'other',
  source: 'measured by the user',
};
