import { describe, expect, test } from 'vitest';
import { elementKind, tables } from '../../src/duct/index.ts';
import { readReference } from './read-reference.ts';

/** fixtures/reference/cyclone.json: H of a named model to 1e-4; across models only within a factor of 2.6. */

type Heads = {
  name: string;
  'ab/De2': number;
  H_shepherd_lapple_16: number;
  H_casal_martinez: number;
  H_stairmand1949: number;
  NH_printed: number;
};
type Worked = { name: string; D: number; v_in: number; dp_shepherd_lapple: number; dp_casal_martinez: number };
type Proportions = { name: string; a: number; b: number; De: number };
const { sections } = readReference<{
  sections: {
    velocity_heads: { rows: Heads[] };
    worked_grid: { rows: Worked[] };
    proportions: { rows: Proportions[] };
    examples: { rows: { id: string; given: Record<string, number>; answer_full: Record<string, number> }[] };
  };
}>('cyclone.json');
const [shepherdLapple, casalMartinez] = tables.CYCLONE_MODELS;

describe('velocity heads', () => {
  test.each(sections.velocity_heads.rows)('$name', (row) => {
    const ratio = row['ab/De2'];
    expect(Math.abs(shepherdLapple.velocityHeads(ratio) / row.H_shepherd_lapple_16 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(casalMartinez.velocityHeads(ratio) / row.H_casal_martinez - 1)).toBeLessThan(1e-4);
    const { k, doubt } = tables.cycloneCoefficient(ratio, 1);
    expect(k).toBeCloseTo(Math.sqrt(row.H_shepherd_lapple_16 * row.H_casal_martinez), 3);
    for (const other of [row.H_shepherd_lapple_16, row.H_casal_martinez])
      expect(Math.abs(Math.log(other / k))).toBeLessThan(1.001 * doubt);
    expect(Math.abs(Math.log(row.NH_printed / k))).toBeLessThan(2 * doubt);
    expect(Math.abs(Math.log(row.H_stairmand1949 / k))).toBeLessThan(Math.log(2.6));
  });

  test("a calculation sheet's worked example: 9.4937 heads, 1943.08 Pa", () => {
    const { given, answer_full } = sections.examples.rows.find(({ id }) => id === 'shepherd_lapple_sheet')!;
    const area = given.a_m! * given.b_m!;
    const heads = shepherdLapple.velocityHeads(area / given.De_m! ** 2);
    expect(Math.abs(heads / answer_full.NH! - 1)).toBeLessThan(1e-4);
    const velocity = given.Q! / area;
    expect(Math.abs((heads * given.rho! * velocity ** 2) / 2 / answer_full.dp_Pa! - 1)).toBeLessThan(1e-4);
  });
});

describe('loss of a standard cyclone lies between the two models, at any size', () => {
  const air = { density_kg_m3: 1.2, viscosity_Pa_s: 1.8134e-5, pressure_Pa: 101325 };

  test.each(sections.worked_grid.rows)('$name, body $D m, inlet $v_in m/s', ({ name, D, v_in, ...dp }) => {
    const { a, b, De } = sections.proportions.rows.find((row) => row.name === name)!;
    const cyclone = {
      kind: 'cyclone',
      inletHeight_m: a * D,
      inletWidth_m: b * D,
      outletDiameter_m: De * D,
      bodyDiameter_m: D,
    };
    const [term] = elementKind('cyclone').losses(cyclone, { air, filterState: 'clean' });
    if (term?.law !== 'velocity-pressure') throw new Error('expected a loss on the inlet velocity pressure');
    expect(term.area_m2).toBeCloseTo(a * b * D * D, 12);
    const loss = (term.k * air.density_kg_m3 * v_in ** 2) / 2;
    expect(loss).toBeCloseTo(Math.sqrt(dp.dp_shepherd_lapple * dp.dp_casal_martinez), 1);
  });
});
