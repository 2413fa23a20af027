import { z } from 'zod';
import { fraction, nonNegative, positive, doubt } from '../../fields.ts';
import { gate } from '../tables/index.ts';
import { coefficientLoss } from './coefficient-loss.ts';
import type { ElementKind } from './element.ts';

/** Fields of a slide gate left somewhere between open and shut; a gate that plans open and close is the section's own. */
export const GateElement = z.strictObject({
  kind: z.literal('gate'),
  diameter_m: positive('diameter', 'length'),
  opening: fraction('how far it is pulled out', 'open height / diameter').nullish(),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});

/** Gate: k on the full pipe's velocity pressure; k by opening where it is not given. Source: Idelchik, see the table. */
export const gateKind: ElementKind<typeof GateElement> = {
  kind: 'gate',
  label: 'slide gate',
  fields: GateElement,
  losses: (element) => [coefficientLoss(element, 'gate', element, () => gate(element.opening))],
  part: () => 'other',
  source: 'Idelchik diagram 9-6: gate with slot in a round pipe',
};
