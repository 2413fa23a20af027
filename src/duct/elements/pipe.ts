import { z } from 'zod';
import { nonNegative, oneOf, positive, doubt, between } from '../../fields.ts';
import { SURFACE_NAMES } from '../../pipe/surfaces.ts';

export const Pipe = z.strictObject({
  kind: z.literal('pipe'),
  surface: oneOf(SURFACE_NAMES, 'surface').nullish(),
  length_m: nonNegative('length', 'length'),
  diameter_m: positive('inside diameter', 'length'),
  roughness_m: nonNegative('roughness', 'length').nullish(),
  rise_m: between(-1000, 1000, 'rise', 'length').nullish(),
  doubt: doubt(),
});
