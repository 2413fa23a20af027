import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';
import { ENTRY_NAMES, entryCoefficient } from '../tables/index.ts';
import { coefficientLoss } from './coefficient-loss.ts';
import type { ElementKind } from './element.ts';
import { unknownName } from './unknown-name.ts';

/** Fields of a hood, a machine's port or an open pipe end: its name in the table and the duct's inside diameter [m]. */
export const Entry = z.strictObject({
  kind: z.literal('entry'),
  entry: z
    .string()
    .min(1)
    .max(200)
    .meta({ label: 'entry', examples: [...ENTRY_NAMES], help: 'one of the table, or any name with a k of its own' })
    .nullish(),
  hoodAngle_deg: between(0, 180, 'whole angle of a tapered hood', 'angle').nullish(),
  lipRadiusRatio: between(0, 5, "radius of a bell mouth's lip / diameter").nullish(),
  diameter_m: positive('diameter', 'length'),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});

/** Entry: k on the duct's velocity pressure; k by name where it is not given. Source: see the table. */
export const entryKind: ElementKind<typeof Entry> = {
  kind: 'entry',
  label: 'hood or open end',
  fields: Entry,
  losses: (element) => [coefficientLoss(element, 'entry', element, () => entryCoefficient(element.entry, element))],
  part: () => 'hood',
  faults: (element) => unknownName(element.entry, 'entry', element.k, ENTRY_NAMES),
  source: 'Idelchik diagrams 3-1, 3-4; ACGIH hood entries; manuals of woodworking machines',
};
