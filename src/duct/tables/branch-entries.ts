import { alongRows, type Coefficient, type Rows } from './coefficient.ts';

/**
 * A branch entering a main, by angle [degrees], on the branch's own velocity pressure; nothing is charged to the main.
 * One constant per angle is a simplification: by the flow-ratio formula the loss also depends on the share of the flow
 * and can differ by a velocity pressure, hence the doubt.
 * Source: ACGIH Industrial Ventilation (recalled); fixtures/reference/fittings.json, `branch_entry_handbook`.
 */
// prettier-ignore
export const BRANCH_ENTRIES: Rows = [
  [0, 0], [10, 0.06], [15, 0.09], [20, 0.12], [25, 0.15], [30, 0.18], [35, 0.21], [40, 0.25], [45, 0.28], [50, 0.32], [60, 0.44], [90, 1],
];

/** Loss coefficient of a branch entry; 45° where no angle is given. */
export function branchEntry(angle_deg: number | null | undefined): Coefficient {
  const known = angle_deg != null;
  return {
    k: alongRows(BRANCH_ENTRIES, angle_deg ?? 45),
    doubt: known ? 0.6 : 0.7,
    source:
      'ACGIH Industrial Ventilation (recalled), one factor per angle; the flow-ratio formula differs by up to one velocity pressure',
  };
}
