import { z } from 'zod';
import { nonNegative, positive, doubt } from '../../fields.ts';

export const Exit = z.strictObject({
  kind: z.literal('exit'),
  diameter_m: positive('diameter', 'length'),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});
