import { describe, expect, test } from 'vitest';
import { tables } from '../../src/duct/index.ts';
import {
  FIVE_GORES_BY_DIAMETER,
  FIVE_PIECES_BY_RADIUS,
  GORED_ELBOWS_BY_RADIUS,
  PLEATED_ELBOWS,
  SEVEN_GORES_BY_DIAMETER,
  SMOOTH_ELBOWS,
  type Rows,
} from '../../src/duct/tables/index.ts';
import { TWO, type Claim, type Row } from './claims/claim.ts';
import { CONVEYING_CLAIMS } from './claims/conveying-claims.ts';
import { cycloneClaims } from './claims/cyclone-claims.ts';
import { FITTING_CLAIMS } from './claims/fitting-claims.ts';
import { frictionClaims } from './claims/friction-claims.ts';
import { readReference } from './read-reference.ts';

/**
 * Every row of the four reference files on ducts is claimed exactly once: as a row of a program's table (and equals it to the
 * file's tolerance), as a source that disagrees (and lies within the doubt), or as not used, with the reason. And back: every
 * number of the program's tables is some row of a file.
 */

type Reference = { sections: Record<string, { rows: Row[] } & Row> };
const fittings = readReference<Reference>('fittings.json');
const friction = readReference<Reference>('friction.json');
const cyclone = readReference<Reference>('cyclone.json');
const conveying = readReference<Reference>('conveying.json');
const { rho, mu } = friction.sections.duct_gradient!;

const FILES: [name: string, file: Reference, claims: readonly Claim[]][] = [
  ['fittings.json', fittings, FITTING_CLAIMS],
  ['friction.json', friction, frictionClaims(friction.sections.colebrook_grid!.eD, { rho, mu })],
  ['cyclone.json', cyclone, cycloneClaims(cyclone.sections.proportions!.rows, 1.2)],
  ['conveying.json', conveying, CONVEYING_CLAIMS],
];
const all = FILES.flatMap(([name, file, claims]) =>
  Object.entries(file.sections).map(([section, { rows }]) => ({ name, section, rows, claims })),
);

describe.each(all)('$name, $section', ({ section, rows, claims }) => {
  const own = claims.filter((claim) => claim.section === section);

  test('every row is claimed, and once', () => {
    expect(rows.length).toBeGreaterThan(0);
    const odd = rows.filter((row) => own.filter((claim) => claim.rows(row)).length !== 1);
    expect(odd).toEqual([]);
    expect(own.filter((claim) => !rows.some((row) => claim.rows(row)))).toEqual([]);
  });

  test('and holds', () => {
    for (const row of rows) {
      const claim = own.find((one) => one.rows(row))!;
      const which = JSON.stringify(row);
      if ('is' in claim) {
        const [ours, theirs] = claim.is(row);
        expect(Math.abs(ours - theirs), `${ours} against ${theirs}: ${which}`).toBeLessThanOrEqual(claim.within);
      } else if ('near' in claim) {
        const [{ k, doubt, floor = 0 }, theirs] = claim.near(row);
        if (Math.abs(k - theirs) <= floor) continue;
        expect(Math.abs(Math.log(theirs / k)), `${k} ± ${doubt} against ${theirs}: ${which}`).toBeLessThan(TWO * doubt);
      } else expect(claim.aside.length).toBeGreaterThan(10);
    }
  });
});

/** Values of all reference rows that are a row of one of the program's tables. */
const valuesOf = (table: string): number[] =>
  FITTING_CLAIMS.flatMap((claim) =>
    'is' in claim && claim.table === table
      ? fittings.sections[claim.section]!.rows.filter(claim.rows).map((row) => claim.is(row)[1])
      : [],
  );

const TABLES: [table: string, rows: Rows][] = [
  ['SMOOTH_ELBOWS 90', SMOOTH_ELBOWS[90]],
  ['THREE_GORES', GORED_ELBOWS_BY_RADIUS[3]],
  ['FOUR_GORES', GORED_ELBOWS_BY_RADIUS[4]],
  ['FIVE_GORES', FIVE_GORES_BY_DIAMETER],
  ['SEVEN_GORES', SEVEN_GORES_BY_DIAMETER],
  ['FIVE_PIECES', FIVE_PIECES_BY_RADIUS],
  ['pleated-elbow-90', PLEATED_ELBOWS[90]],
  ['pleated-elbow-45', PLEATED_ELBOWS[45]],
  ['BELL_MOUTHS', tables.BELL_MOUTHS],
  ['TAPERED_HOODS', tables.TAPERED_HOODS],
  ['GATES', tables.GATES],
];

describe('back from the tables to the files', () => {
  test.each(TABLES)('every row of %s', (table, rows) => {
    const known = valuesOf(table);
    for (const [x, k] of rows) {
      expect(Math.min(...known.map((value) => Math.abs(value - k))), `${table}, ${x}: ${k}`).toBeLessThan(0.01);
    }
  });

  test('smooth elbows below 90°: the file, and at the sharpest the share of the angle', () => {
    for (const angle of [60, 45, 30] as const) {
      const known = [...valuesOf(`SMOOTH_ELBOWS ${angle}`), (SMOOTH_ELBOWS[90][0]![1] * angle) / 90];
      for (const [, k] of SMOOTH_ELBOWS[angle])
        expect(Math.min(...known.map((value) => Math.abs(value - k)))).toBeLessThan(1e-5);
    }
  });

  test('branch entries: the file; none at 0°', () => {
    const known = [0, ...valuesOf('BRANCH_ENTRIES')];
    for (const [, k] of tables.BRANCH_ENTRIES) expect(known).toContain(k);
  });

  /** Names whose number comes from elsewhere: a formula, a table of its own, another file, or nobody. */
  const ELSEWHERE: Record<string, string> = {
    'elbow-90': 'SMOOTH_ELBOWS 90',
    'elbow-60': 'SMOOTH_ELBOWS 60',
    'elbow-45': 'SMOOTH_ELBOWS 45',
    'elbow-30': 'SMOOTH_ELBOWS 30',
    'bell-mouth': 'BELL_MOUTHS',
    'tapered-hood': 'TAPERED_HOODS',
    'machine-port': 'fixtures/reference/workshop.json, machine_ports',
    'inlet-elbow': 'fixtures/reference/workshop.json, inlet_elbows',
    'inlet-swirl': 'fixtures/reference/workshop.json, inlet_swirl: nobody publishes one, the doubt says so',
  };

  test.each([...tables.FITTING_NAMES, ...tables.ENTRY_NAMES])('%s has a row', (name) => {
    const elsewhere = ELSEWHERE[name];
    if (elsewhere?.startsWith('fixtures')) {
      const [, section] = elsewhere.split(/, |:/);
      expect(readReference<Reference>('workshop.json').sections).toHaveProperty(section!);
    } else expect(valuesOf(elsewhere ?? name).length).toBeGreaterThan(0);
  });
});
