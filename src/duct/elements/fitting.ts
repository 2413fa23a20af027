import { z } from 'zod';
import { nonNegative, positive, doubt } from '../../fields.ts';
import { FITTING_NAMES, fittingRecord } from '../tables/index.ts';
import { coefficientLoss } from './coefficient-loss.ts';
import type { ElementKind } from './element.ts';
import { unknownName } from './unknown-name.ts';

/** Fields of a bend or other named fitting: its name, inside diameter [m], and how it is made. */
export const Fitting = z.strictObject({
  kind: z.literal('fitting'),
  fitting: z
    .string()
    .min(1)
    .max(200)
    .meta({
      label: 'fitting',
      examples: [...FITTING_NAMES],
      help: 'one of the table, or any name with a k of its own',
    }),
  diameter_m: positive('diameter', 'length'),
  radiusRatio: positive('bend radius / diameter').nullish(),
  gores: z.int().gte(0).lte(20).meta({ label: 'gores' }).nullish(),
  vanes: z.boolean().meta({ label: 'turning vanes' }).nullish(),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});

/** Fitting: k on the pipe's velocity pressure, times count; k by name and shape where it is not given. Source: see the tables. */
export const fittingKind: ElementKind<typeof Fitting> = {
  kind: 'fitting',
  label: 'bend or fitting',
  fields: Fitting,
  losses: (element) => {
    const record = fittingRecord(element.fitting);
    return [coefficientLoss(element, record?.doubtKind ?? 'fitting', element, () => record?.coefficient(element))];
  },
  part: (element) => fittingRecord(element.fitting)?.part ?? 'other',
  faults: (element) => unknownName(element.fitting, 'fitting', element.k, FITTING_NAMES),
  source: 'Rennels smooth bends, ASHRAE Fundamentals 2009 gored elbows, system effect factors; see src/duct/tables',
};
