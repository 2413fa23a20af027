import {
  elbow,
  fittingRecord,
  MITRES,
  type ElbowAngle,
  type ElbowShape,
  type FittingName,
} from '../../../src/duct/tables/index.ts';
import type { Claim, Row } from './claim.ts';
import { both, called, one, TABLE } from './pick.ts';

/** Elbows and mitres of fixtures/reference/fittings.json. */

const fitting = (name: FittingName, shape: ElbowShape = { diameter_m: 0.2 }) => fittingRecord(name)!.coefficient(shape);
const sized = (row: Row) => ({ diameter_m: row.D_mm / 1000 });

const gored = (name: string, gores: number, radiusRatio: number, table: string): Claim => ({
  section: 'elbows_handbook',
  rows: called(name),
  table,
  within: TABLE,
  is: (row) => [elbow(90, { ...sized(row), radiusRatio, gores }).k, row.K],
});
const pieces = (name: string, gores: number, table: string): Claim => ({
  section: 'elbows_handbook',
  rows: called(name),
  table,
  within: TABLE,
  is: (row) => [elbow(90, { diameter_m: 0.2, radiusRatio: row.r_over_D, gores }).k, row.K],
});
const stamped = (angle: ElbowAngle): Claim => ({
  section: 'elbows_handbook',
  rows: called(`${angle} elbow, die stamped, r/D 1.5`),
  near: (row) => [elbow(angle, sized(row)), row.K],
});

export const ELBOW_CLAIMS: readonly Claim[] = [
  stamped(90),
  stamped(45),
  ...([90, 45] as const).map((angle): Claim => ({
    section: 'elbows_handbook',
    rows: called(`${angle} elbow, pleated, r/D 1.5`),
    table: `pleated-elbow-${angle}`,
    within: TABLE,
    is: (row) => [fitting(`pleated-elbow-${angle}`, sized(row)).k, row.K],
  })),
  gored('90 elbow, 5 gore, r/D 1.5', 5, 1.5, 'FIVE_GORES'),
  gored('90 elbow, 7 gore, r/D 2.5', 7, 2.5, 'SEVEN_GORES'),
  pieces('90 elbow, 3 gore', 3, 'THREE_GORES'),
  pieces('90 elbow, 3 piece', 3, 'THREE_GORES'),
  pieces('90 elbow, 4 piece', 4, 'FOUR_GORES'),
  {
    section: 'elbows_handbook',
    rows: called('90 elbow, 5 piece'),
    table: 'FIVE_PIECES',
    within: TABLE,
    is: ({ r_over_D, K }) => {
      const at = (radiusRatio: number) => elbow(90, { diameter_m: 0.15, radiusRatio, gores: 5 }).k;
      return [(0.24 * at(r_over_D)) / at(1.5), K];
    },
  },
  {
    section: 'elbows_handbook',
    rows: both(called('90 elbow, stamped (smooth)'), (row) => row.r_over_D === 0.5),
    table: 'SMOOTH_ELBOWS 90',
    within: TABLE,
    is: (row) => [elbow(90, { diameter_m: 0.2, radiusRatio: 0.5 }).k, row.K],
  },
  {
    section: 'elbows_handbook',
    rows: both(called('90 elbow, stamped (smooth)'), (row) => row.r_over_D > 0.5),
    near: (row) => [elbow(90, { diameter_m: 0.2, radiusRatio: row.r_over_D }), row.K],
  },
  {
    section: 'elbows_handbook',
    rows: (row) => row.fitting.startsWith('90 elbow, one-curve table'),
    aside: 'given up by its own publisher for tables that tell smooth, stamped and gored elbows apart',
  },
  {
    section: 'elbows_handbook',
    rows: called('90 mitre, no vanes'),
    near: (row) => [MITRES.plain[90], row.K],
  },
  one('elbows_handbook', '90 mitre with turning vanes', 'mitre-90', () =>
    fitting('mitre-90', { diameter_m: 0.2, vanes: true }),
  ),
  {
    section: 'elbows_handbook',
    rows: called('angle factor on the 90 degree loss'),
    table: 'ANGLE_SHARE',
    within: 1e-4,
    is: ({ angle, factor }) => {
      const shape = { diameter_m: 0.15, radiusRatio: 1.5, gores: 5 };
      return [elbow(angle, shape).k / elbow(90, shape).k, factor];
    },
  },
  ...([90, 60, 45, 30] as const).map((angle): Claim => ({
    section: 'elbows_computed',
    rows: (row) => row.angle === angle,
    table: `SMOOTH_ELBOWS ${angle}`,
    within: 1e-6,
    is: (row) => [elbow(angle, { diameter_m: 0.125, radiusRatio: row.r_over_D }).k, row.K_Rennels],
  })),
  ...([90, 45] as const).map((angle): Claim => ({
    section: 'mitre_computed',
    rows: (row) => row.angle === angle,
    table: `mitre-${angle}`,
    within: 1e-5,
    is: (row) => [fitting(`mitre-${angle}`).k, row.K_Rennels],
  })),
  {
    section: 'mitre_computed',
    rows: ({ angle }) => ![90, 45].includes(angle),
    aside: 'mitres are sawn at 45° and 90°; another angle is told with its own k',
  },
];
