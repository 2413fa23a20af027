import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';
import { branchEntry } from '../tables/index.ts';
import { coefficientLoss } from './coefficient-loss.ts';
import type { ElementKind } from './element.ts';

/** Fields of a branch entering a main: its angle [degrees] and the branch's inside diameter [m]. */
export const BranchEntry = z.strictObject({
  kind: z.literal('branch-entry'),
  angle_deg: between(0, 90, 'angle of the branch', 'angle').nullish(),
  diameter_m: positive('diameter', 'length'),
  k: nonNegative('loss coefficient').nullish(),
  count: nonNegative('count').nullish(),
  doubt: doubt(),
});

/** Branch entry: k on the branch's own velocity pressure; k by angle where it is not given. Source: ACGIH, see the table. */
export const branchEntryKind: ElementKind<typeof BranchEntry> = {
  kind: 'branch-entry',
  label: 'branch into a main',
  fields: BranchEntry,
  losses: (element) => [coefficientLoss(element, 'branch-entry', element, () => branchEntry(element.angle_deg))],
  part: () => 'other',
  source: 'ACGIH Industrial Ventilation, one factor per angle on the branch velocity pressure',
};
