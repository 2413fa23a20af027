import { z } from 'zod';
import { nonNegative, oneOf, positive, doubt } from '../../fields.ts';

export const FITTING_NAMES = ['elbow-90', 'elbow-60', 'elbow-45', 'elbow-30', 'mitre-90', 'mitre-45', 'hose-bend-90', 'tee-through', 'inlet-elbow', 'inlet-swirl'] as const;

export const Fitting = z.strictObject({
  kind: z.literal('fitting'),
  fitting: oneOf(FITTING_NAMES, 'fitting'),
  diameter_m: positive('diameter', 'length'),
  radiusRatio: positive('bend radius / diameter').nullish(),
  gores: z.int().gte(0).lte(20).meta({ label: 'gores' }).nullish(),
  vanes: z.boolean().meta({ label: 'turning vanes' }).nullish(),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});
