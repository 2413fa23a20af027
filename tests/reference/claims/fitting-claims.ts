import { tables } from '../../../src/duct/index.ts';
import { fittingRecord, HOSE_BENDS, type FittingName } from '../../../src/duct/tables/index.ts';
import type { Claim, Row } from './claim.ts';
import { ELBOW_CLAIMS } from './elbow-claims.ts';
import { ENTRY_CLAIMS } from './entry-claims.ts';
import { both, called, method, not, one, TABLE } from './pick.ts';

/** fixtures/reference/fittings.json. Its tolerance: a program table equals its declared source to 0.01, Borda–Carnot to 1e-6. */

const fitting = (name: FittingName) => fittingRecord(name)!.coefficient({ diameter_m: 0.2 });

/** Where branch and main run about equally fast, as they are built to, the constant of the angle must hold. */
const equallyFast = (row: Row) => {
  const ratio = row['Q_branch/Q_comb'] / row['d_branch/d_main'] ** 2;
  return ratio > 0.75 && ratio < 1.3;
};
const teeRun = (row: Row) => row.angle === 90 && row['Q_branch/Q_comb'] === 0.1;

const BRANCHES: Claim[] = [
  {
    section: 'branch_entry_handbook',
    rows: () => true,
    table: 'BRANCH_ENTRIES',
    within: 1e-9,
    is: (row) => [tables.branchEntry(row.angle).k, row.K_on_branch_velocity_pressure],
  },
  {
    section: 'branch_entry_computed',
    rows: teeRun,
    table: 'tee-through',
    within: TABLE,
    is: (row) => [fitting('tee-through').k, row.K_run_on_combined_velocity],
  },
  {
    section: 'branch_entry_computed',
    rows: both(equallyFast, not(teeRun)),
    near: (row) => [tables.branchEntry(row.angle), row.K_branch_on_branch_velocity],
  },
  {
    section: 'branch_entry_computed',
    rows: both(not(equallyFast), not(teeRun)),
    aside:
      'one factor per angle on the branch, after the job contract: the flow-ratio formula leaves it where branch and main run at very different speeds, and then the velocity check complains first',
  },
];

const small = 0.1;
const changed = (row: Row, widening: boolean) => {
  const narrow_m = small * row['d_small/d_large'];
  const [fromDiameter_m, toDiameter_m] = widening ? [narrow_m, small] : [small, narrow_m];
  return tables.reducer({ fromDiameter_m, toDiameter_m, coneAngle_deg: row.included_angle ?? 180 });
};
const sudden = (row: Row) => row.fitting.startsWith('sudden');

const CHANGES: Claim[] = [
  {
    section: 'expansion',
    rows: method('Crane', 'exact momentum'),
    table: 'reducer',
    within: 2e-6,
    is: (row) => [changed(row, true).k, row.K_on_small],
  },
  {
    section: 'contraction',
    rows: method('Crane'),
    table: 'reducer',
    within: 2e-6,
    is: (row) => [changed(row, false).k, row.K_on_small],
  },
  {
    section: 'contraction',
    rows: both(sudden, not(method('Crane'))),
    near: (row) => [changed(row, false), row.K_on_small],
  },
  {
    section: 'contraction',
    rows: both(not(sudden), not(method('Crane'))),
    near: (row) => [withFloor(changed(row, false)), row.K_on_small],
  },
  {
    section: 'expansion',
    rows: method('Rennels', 'Miller', 'Idelchik'),
    near: (row) => [withFloor(changed(row, true)), row.K_on_small],
  },
];

/** Two coefficients that differ by less than the file's tolerance between handbooks, 0.05, do not disagree. */
function withFloor({ k, doubt }: { k: number; doubt: number }) {
  return { k, doubt, floor: 0.05 };
}

const GATES: Claim[] = [
  {
    section: 'gates',
    rows: (row) => row.fitting.startsWith('circular gate with recess'),
    table: 'GATES',
    within: 0.001,
    is: (row) => [tables.gate(row.h_over_D).k, row.K],
  },
  {
    section: 'gates',
    rows: both(called('circular slide gate, no recess'), (row) => row.h_over_D <= 0.7),
    near: (row) => [tables.gate(row.h_over_D), row.K],
  },
  {
    section: 'gates',
    rows: both(called('circular slide gate, no recess'), (row) => row.h_over_D > 0.7),
    aside: 'a dust gate has its slot; near full opening the one without loses less than the doubt is worth',
  },
  {
    section: 'gates',
    rows: (row) => /^(rectangular|square) slide gate/.test(row.fitting),
    aside: 'ducts of a shop are round',
  },
  {
    section: 'gates',
    rows: (row) => row.fitting.startsWith('butterfly'),
    aside: 'a disc in the duct catches chips: dust gates are slides, and a damper is told with its own k',
  },
  one('gates', 'blast gate fully open', 'GATES', () => tables.gate(1)),
];

const HOSES = ['r/D 1', 'r/D 1.5-2', 'r/D 2.5 and more'];
const HOSE_AND_STACK: Claim[] = [
  ...HOSES.map((radius, i): Claim => {
    return one('hose_and_stack', `flexible hose 90 bend, ${radius}`, 'hose-bend-90', () => HOSE_BENDS[i]!.coefficient);
  }),
  one('hose_and_stack', 'weather cap, 0.75 D above', 'weather-cap', () => fitting('weather-cap')),
  one('hose_and_stack', 'weather cap, 0.5 D above', 'weather-cap-low', () => fitting('weather-cap-low')),
  one('hose_and_stack', 'no-loss vertical stack head', 'stack-head', () => fitting('stack-head')),
  {
    section: 'hose_and_stack',
    rows: called('compressed flexible hose'),
    aside: 'a fact without a number of its own: hose is taken as pulled out, and its surface says so',
  },
];

export const FITTING_CLAIMS: readonly Claim[] = [
  ...ELBOW_CLAIMS,
  ...ENTRY_CLAIMS,
  ...BRANCHES,
  ...CHANGES,
  ...GATES,
  ...HOSE_AND_STACK,
];
