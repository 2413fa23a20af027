import { tables } from '../../../src/duct/index.ts';
import type { Claim, Row } from './claim.ts';

/** fixtures/reference/cyclone.json: H of a named model to 1e-4, across models only within a factor of 2.6. */

const [shepherdLapple] = tables.CYCLONE_MODELS;
const middle = (a: number, b: number) => Math.sqrt(a * b);

/** Loss coefficient of standard proportions, all as shares of the body's diameter. */
const ofProportions = ({ a, b, De }: Row) => tables.cycloneCoefficient(a * b, De);

export const cycloneClaims = (proportions: readonly Row[], rho: number): readonly Claim[] => [
  {
    section: 'proportions',
    rows: () => true,
    near: (row) => [ofProportions(row), row.NH_printed],
  },
  {
    section: 'proportions_read',
    rows: () => true,
    aside: 'the same proportions with misprints, which the file names',
  },
  {
    section: 'velocity_heads',
    rows: () => true,
    table: 'cyclone, by middle of both models',
    within: 1e-3,
    is: (row) => [
      tables.cycloneCoefficient(row['ab/De2'], 1).k,
      middle(row.H_shepherd_lapple_16, row.H_casal_martinez),
    ],
  },
  {
    section: 'worked_grid',
    rows: () => true,
    table: 'cyclone, pascals, relative',
    within: 1e-4,
    is: ({ name, v_in, dp_shepherd_lapple, dp_casal_martinez }) => {
      const row = proportions.find((one) => one.name === name)!;
      const loss_Pa = (ofProportions(row).k * rho * v_in ** 2) / 2;
      return [loss_Pa / middle(dp_shepherd_lapple, dp_casal_martinez), 1];
    },
  },
  {
    section: 'examples',
    rows: (row) => row.id === 'shepherd_lapple_sheet',
    table: 'Shepherd–Lapple',
    within: 1e-3,
    is: ({ given, answer_full }) => [
      shepherdLapple.velocityHeads((given.a_m * given.b_m) / given.De_m ** 2),
      answer_full.NH,
    ],
  },
  {
    section: 'examples',
    rows: (row) => row.id !== 'shepherd_lapple_sheet',
    aside: 'what a cyclone catches: the job states its share, the program works out none',
  },
  {
    section: 'typical_pressure_drop',
    rows: (row) => row.class === 'general purpose',
    // general-purpose proportions at the middle of the usual inlet speeds, 15–20 m/s
    near: ({ dp_Pa }) => {
      const { k, doubt } = ofProportions(proportions.find(({ name }) => name === 'Lapple general purpose')!);
      const loss_Pa = (k * 1.2 * 17 ** 2) / 2;
      return [{ k: loss_Pa, doubt }, Math.min(Math.max(loss_Pa, dp_Pa[0]), dp_Pa[1])];
    },
  },
  {
    section: 'typical_pressure_drop',
    rows: (row) => row.class !== 'general purpose',
    aside: 'classes without proportions or inlet speed: a band for plausibility only',
  },
  {
    section: 'facts',
    rows: (row) => row.fact.startsWith('1D3D / 2D2D / 1D2D loss'),
    // long cones have the inlet D/4 × D/2 and the outlet D/2, so the outlet's velocity pressure is a known share of the inlet's
    near: () => {
      const inlet = 0.25 * 0.5;
      const outletShare = (inlet / ((Math.PI / 4) * 0.5 ** 2)) ** 2;
      return [tables.cycloneCoefficient(inlet, 0.5), middle(5.1, 4.7) * (1 + outletShare)];
    },
  },
  {
    section: 'facts',
    rows: (row) => !row.fact.startsWith('1D3D / 2D2D / 1D2D loss'),
    aside: 'words, or what a cyclone catches',
  },
];
