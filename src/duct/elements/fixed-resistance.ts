import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';

export const FixedResistance = z.strictObject({
  kind: z.literal('fixed-resistance'),
  flow_m3_s: positive('flow of the test', 'flow'),
  pressure_Pa: nonNegative('pressure lost there', 'pressure'),
  exponent: between(0.5, 3, 'exponent').nullish(),
  airDensity_kg_m3: between(0.1, 5, 'air density of the test', 'density').nullish(),
  doubt: doubt(),
});
