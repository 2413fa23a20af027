import { z } from 'zod';
import { fraction, nonNegative, positive, doubt } from '../../fields.ts';

export const GateElement = z.strictObject({
  kind: z.literal('gate'),
  diameter_m: positive('diameter', 'length'),
  opening: fraction('how far it is pulled out').nullish(),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});
