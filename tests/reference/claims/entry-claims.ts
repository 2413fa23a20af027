import { elementKind, tables, type LossTerm } from '../../../src/duct/index.ts';
import type { EntryName } from '../../../src/duct/tables/index.ts';
import type { Claim, Row } from './claim.ts';
import { both, called, method, one, TABLE } from './pick.ts';

/** Entries, hoods and the exit of fixtures/reference/fittings.json. */

const entry = (name: EntryName) => tables.ENTRIES[name].coefficient;

const tapered = (row: Row) => row.fitting.startsWith('tapered hood');
const bell = (row: Row) => row.fitting.startsWith('bell mouth');
const protruding = called('duct end protruding from a wall');
const hood = (name: string, ours: EntryName): Claim =>
  one('entries_handbook', `hood: ${name}`, ours, () => entry(ours));
const nearHood = (name: string, ours: EntryName): Claim => ({
  section: 'entries_handbook',
  rows: called(`hood: ${name}`),
  near: (row) => [entry(ours), row.K],
});

export const ENTRY_CLAIMS: readonly Claim[] = [
  {
    section: 'entries_handbook',
    rows: bell,
    table: 'BELL_MOUTHS',
    within: TABLE,
    is: (row) => [tables.entryCoefficient('bell-mouth', { lipRadiusRatio: row.r_over_D })!.k, row.K],
  },
  {
    section: 'entries_handbook',
    rows: tapered,
    table: 'TAPERED_HOODS',
    within: TABLE,
    is: (row) => [tables.entryCoefficient('tapered-hood', { hoodAngle_deg: row.included_angle })!.k, row.K_round],
  },
  {
    section: 'entries_handbook',
    rows: both(protruding, (row) => row.L_over_D === 0),
    table: 'flanged',
    within: TABLE,
    is: (row) => [entry('flanged').k, row.K],
  },
  {
    section: 'entries_handbook',
    rows: both(protruding, (row) => row.L_over_D >= 0.2 && row.t_over_D === 0),
    near: (row) => [entry('plain'), row.K],
  },
  {
    section: 'entries_handbook',
    rows: both(protruding, (row) => row.L_over_D > 0 && (row.L_over_D < 0.2 || row.t_over_D > 0)),
    aside: 'a thick wall or a short stub lies between the plain end and the flush one, which bracket it',
  },
  hood('plain duct end', 'plain'),
  nearHood('flanged duct end', 'flanged'),
  nearHood('bell-mouth (r/D >= 0.2)', 'bell-mouth'),
  {
    section: 'entries_handbook',
    rows: called('hood: sharp orifice at entry, on slot velocity pressure'),
    aside: 'a slot has its own velocity; a slotted hood is told with its own k',
  },
  hood('grinder hood, straight take-off', 'grinder-hood'),
  nearHood('grinder hood, tapered take-off', 'grinder-hood-tapered'),
  hood('standard booth, direct', 'booth'),
  hood('tapered trap or settling chamber', 'settling-trap'),
  one('entries_handbook', 'grinder hood, straight take-off', 'grinder-hood', () => entry('grinder-hood')),
  one('entries_handbook', 'grinder hood, tapered take-off', 'grinder-hood-tapered', () =>
    entry('grinder-hood-tapered'),
  ),
  {
    section: 'entries_handbook',
    rows: called('entry coefficient to loss factor'),
    aside: 'the entry coefficient is another way to write the loss factor, and the program writes the factor',
  },
  {
    section: 'entries_computed',
    rows: called('flush sharp entry'),
    near: (row) => [entry('flanged'), row.K],
  },
  {
    section: 'entries_computed',
    rows: called('rounded flush entry'),
    aside: 'lips in a wall; the table has lips without one, which lose more and are what a shop bends',
  },
  {
    section: 'entries_computed',
    rows: both(called('protruding pipe, wall 1 % D'), (row) => row.method !== 'Idelchik'),
    near: (row) => [entry('plain'), row.K],
  },
  {
    section: 'entries_computed',
    rows: both(called('protruding pipe, wall 1 % D'), method('Idelchik')),
    aside: 'the same diagram as the read rows of the duct end protruding from a wall',
  },
  {
    section: 'entries_computed',
    rows: called('flush entry inclined to the wall (angle between pipe and wall)'),
    aside: 'a pipe slanting out of a wall is told with its own k',
  },
  one('entries_computed', 'exit into room (kinetic energy lost)', 'exit', () => {
    const context = {
      air: { density_kg_m3: 1.2, viscosity_Pa_s: 1.8e-5, pressure_Pa: 1e5 },
      filterState: 'clean',
    } as const;
    const [term] = elementKind('exit').losses({ kind: 'exit', diameter_m: 0.1 }, context);
    return term as Extract<LossTerm, { law: 'velocity-pressure' }>;
  }),
];
