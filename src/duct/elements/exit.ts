import { z } from 'zod';
import { nonNegative, positive, doubt } from '../../fields.ts';
import { coefficientLoss } from './coefficient-loss.ts';
import type { ElementKind } from './element.ts';

export const Exit = z.strictObject({
  kind: z.literal('exit'),
  diameter_m: positive('diameter', 'length'),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});

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
