import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';

export const BranchEntry = z.strictObject({
  kind: z.literal('branch-entry'),
  angle_deg: between(0, 90, 'angle of the branch', 'angle').nullish(),
  diameter_m: positive('diameter', 'length'),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});
