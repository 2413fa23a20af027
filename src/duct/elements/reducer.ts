import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';

export const Reducer = z.strictObject({
  kind: z.literal('reducer'),
  fromDiameter_m: positive('diameter before', 'length'),
  toDiameter_m: positive('diameter after', 'length'),
  coneAngle_deg: between(0, 180, 'whole angle of the cone', 'angle').nullish(),
  k: nonNegative('loss coefficient').nullish(),
  doubt: doubt(),
});
