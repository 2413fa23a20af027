import { z } from 'zod';
import { nonNegative, oneOf, positive, doubt } from '../../fields.ts';

export const ENTRY_NAMES = ['plain', 'flanged', 'bell-mouth', 'tapered-hood', 'machine-port'] as const;

export const Entry = z.strictObject({
  kind: z.literal('entry'),
  entry: oneOf(ENTRY_NAMES, 'entry').nullish(),
  diameter_m: positive('diameter', 'length'),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});
