import { z } from 'zod';
import { nonNegative, positive, doubt } from '../../fields.ts';
import { coefficientLoss } from './coefficient-loss.ts';
import type { ElementKind } from './element.ts';

/** Fields of the place where air leaves a duct for the open or for a large box: its inside diameter [m]. */
export const Exit = z.strictObject({
  kind: z.literal('exit'),
  diameter_m: positive('diameter', 'length'),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});

/** Exit: the whole velocity pressure is lost, k = 1 by definition. */
export const exitKind: ElementKind<typeof Exit> = {
  kind: 'exit',
  label: 'way out into the open',
  fields: Exit,
  losses: (element) => [
    coefficientLoss(element, 'exit', element, () => ({
      k: 1,
      doubt: 0.05,
      source: 'the velocity pressure is lost; the flow is not quite even',
    })),
  ],
  part: () => 'way-out',
  source: 'definition: the whole velocity pressure is lost',
};
