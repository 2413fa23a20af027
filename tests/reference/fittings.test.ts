import { describe, expect, test } from 'vitest';
import { tables } from '../../src/duct/index.ts';
import {
  elbow,
  FITTING_NAMES,
  fittingRecord,
  HOSE_BENDS,
  MITRES,
  type ElbowAngle,
} from '../../src/duct/tables/index.ts';
import { readReference } from './read-reference.ts';

/**
 * fixtures/reference/fittings.json and workshop.json: every row the program's tables are made of, against its source.
 * Tolerance there: a program table equals its declared source to 0.01, Borda–Carnot to 1e-6, gate points to three digits.
 */

type Row = Record<string, number> & { fitting: string; source: string; method: string; range?: [number, number] };
type Sections = Record<string, { rows: Row[] }>;
const sections = readReference<{ sections: Sections }>('fittings.json').sections;
const workshop = readReference<{ sections: Sections }>('workshop.json').sections;
const rowsOf = (section: string, pick: (row: Row) => boolean): Row[] => {
  const rows = sections[section]!.rows.filter(pick);
  expect(rows.length, `rows of ${section}`).toBeGreaterThan(0);
  return rows;
};

describe('elbows', () => {
  test.each([90, 60, 45, 30] as ElbowAngle[])('smooth, %s°, by radius ratio: Rennels', (angle) => {
    for (const row of rowsOf('elbows_computed', (each) => each.angle === angle)) {
      const { k, doubt } = elbow(angle, { diameter_m: 0.125, radiusRatio: row.r_over_D });
      expect(k).toBeCloseTo(row.K_Rennels!, 6);
      if (angle === 90) {
        // The doubt is the spread between methods; the outlier is named in the file.
        for (const other of ['K_Crane', 'K_Miller', 'K_Ito'])
          expect(Math.abs(Math.log(row[other]! / k))).toBeLessThan(2 * doubt);
      }
    }
  });

  test('a bought elbow of unknown radius covers the stamped ones of 75–250 mm with two deviations', () => {
    const { k, doubt } = elbow(90, { diameter_m: 0.1 });
    for (const { K } of rowsOf('elbows_handbook', ({ fitting }) => fitting === '90 elbow, die stamped, r/D 1.5')) {
      expect(Math.abs(Math.log(K! / k))).toBeLessThan(2.1 * doubt);
    }
  });

  test('3 gores by radius ratio: ASHRAE CD3-12', () => {
    for (const { r_over_D, K } of rowsOf(
      'elbows_handbook',
      ({ fitting, source }) => fitting === '90 elbow, 3 gore' && source.includes('CD3-12'),
    )) {
      expect(elbow(90, { diameter_m: 0.2, radiusRatio: r_over_D, gores: 3 }).k).toBeCloseTo(K!, 6);
    }
  });

  test('4 pieces by radius ratio: ACGIH', () => {
    for (const { r_over_D, K } of rowsOf('elbows_handbook', ({ fitting }) => fitting === '90 elbow, 4 piece')) {
      expect(elbow(90, { diameter_m: 0.2, radiusRatio: r_over_D, gores: 4 }).k).toBeCloseTo(K!, 6);
    }
  });

  test.each([
    ['90 elbow, 5 gore, r/D 1.5', 1.5, 5],
    ['90 elbow, 7 gore, r/D 2.5', 2.5, 7],
  ] as const)('%s, by diameter: ASHRAE', (fitting, radiusRatio, gores) => {
    for (const { D_mm, K } of rowsOf('elbows_handbook', (row) => row.fitting === fitting)) {
      expect(elbow(90, { diameter_m: D_mm! / 1000, radiusRatio, gores }).k).toBeCloseTo(K!, 6);
    }
  });

  test('5 pieces: the shape by radius ratio that moves the rows by diameter', () => {
    const at = (radiusRatio: number) => elbow(90, { diameter_m: 0.15, radiusRatio, gores: 5 }).k;
    const rows = rowsOf('elbows_handbook', ({ fitting }) => fitting === '90 elbow, 5 piece');
    const middle = rows.find(({ r_over_D }) => r_over_D === 1.5)!.K!;
    for (const { r_over_D, K } of rows) expect(at(r_over_D!) / at(1.5)).toBeCloseTo(K! / middle, 6);
  });

  test('smaller angles of gored elbows: 2/3, 1/2, 1/3 by the velocity-pressure sheet', () => {
    for (const { angle, factor } of rowsOf(
      'elbows_handbook',
      ({ fitting }) => fitting === 'angle factor on the 90 degree loss',
    )) {
      const shape = { diameter_m: 0.15, radiusRatio: 1.5, gores: 5 };
      expect(elbow(angle as ElbowAngle, shape).k / elbow(90, shape).k).toBeCloseTo(factor!, 4);
    }
  });

  test.each([90, 45] as const)('mitre of %s° without vanes: Rennels', (angle) => {
    const [row] = rowsOf('mitre_computed', (each) => each.angle === angle);
    expect(MITRES.plain[angle].k).toBeCloseTo(row!.K_Rennels!, 5);
    for (const other of ['K_Miller', 'K_Blevins']) {
      expect(Math.abs(Math.log(row![other]! / row!.K_Rennels!))).toBeLessThan(2 * MITRES.plain[angle].doubt);
    }
  });

  test('mitre with vanes: ACGIH', () => {
    const [row] = rowsOf('elbows_handbook', ({ fitting }) => fitting === '90 mitre with turning vanes');
    expect(MITRES.vaned[90].k).toBe(row!.K);
  });

  test('hose bends: value and range', () => {
    const rows = rowsOf('hose_and_stack', ({ fitting }) => fitting.startsWith('flexible hose 90 bend'));
    expect(HOSE_BENDS.length).toBe(rows.length);
    HOSE_BENDS.forEach(({ coefficient }, i) => {
      expect(coefficient.k).toBe(rows[i]!.K);
      const [low, high] = rows[i]!.range!;
      expect(coefficient.k * Math.exp(-2 * coefficient.doubt)).toBeLessThan(low * 1.05);
      expect(coefficient.k * Math.exp(2 * coefficient.doubt)).toBeGreaterThan(high * 0.95);
    });
  });
});

describe('entries', () => {
  const k = (name: keyof typeof tables.ENTRIES) => tables.ENTRIES[name].coefficient.k;

  test('plain end: ACGIH, and its entry coefficient', () => {
    expect(k('plain')).toBe(rowsOf('entries_handbook', ({ fitting }) => fitting === 'hood: plain duct end')[0]!.K);
    expect(k('plain')).toBeCloseTo(rowsOf('entries_handbook', ({ Ce }) => Ce === 0.72)[0]!.K!, 2);
  });

  test('flush or flanged: Idelchik 3-1', () => {
    const [row] = rowsOf('entries_handbook', (each) => each.t_over_D === 0 && each.L_over_D === 0);
    expect(k('flanged')).toBe(row!.K);
    for (const { K } of rowsOf('entries_computed', ({ fitting }) => fitting === 'flush sharp entry')) {
      expect(Math.abs(Math.log(K! / k('flanged')))).toBeLessThan(2 * tables.ENTRIES.flanged.coefficient.doubt);
    }
  });

  test('bell mouth: Idelchik 3-4 at a radius of a fifth', () => {
    const [row] = rowsOf(
      'entries_handbook',
      ({ fitting, r_over_D }) => fitting.startsWith('bell mouth') && r_over_D === 0.2,
    );
    expect(k('bell-mouth')).toBe(row!.K);
  });

  test('tapered hoods by angle: ACGIH', () => {
    const rows = rowsOf('entries_handbook', ({ fitting }) => fitting.startsWith('tapered hood'));
    for (const { included_angle, K_round } of rows)
      expect(tables.entryCoefficient('tapered-hood', { hoodAngle_deg: included_angle })!.k).toBe(K_round);
    expect(k('tapered-hood')).toBe(rows.find(({ included_angle }) => included_angle === 90)!.K_round);
  });

  test("machines' own ports: the geometric middle of what manuals ask, less the velocity pressure", () => {
    const rows = workshop.machine_ports!.rows;
    const logs = rows.map(({ pressure_Pa }) => Math.log(pressure_Pa! / 240 - 1));
    rows.forEach(({ K }, i) => expect(Math.log(K!)).toBeCloseTo(logs[i]!, 3));
    expect(Math.abs(Math.log(k('machine-port')) - logs.reduce((a, b) => a + b) / logs.length)).toBeLessThan(0.1);
    const { doubt } = tables.ENTRIES['machine-port'].coefficient;
    for (const log of logs) expect(Math.abs(log - Math.log(k('machine-port')))).toBeLessThan(2 * doubt);
  });
});

test('branch entries by angle: ACGIH', () => {
  for (const { angle, K_on_branch_velocity_pressure } of rowsOf('branch_entry_handbook', () => true)) {
    expect(tables.branchEntry(angle).k).toBeCloseTo(K_on_branch_velocity_pressure!, 9);
  }
  expect(tables.branchEntry(null).k).toBe(tables.branchEntry(45).k);
  expect(tables.branchEntry(null).doubt).toBeGreaterThan(tables.branchEntry(45).doubt);
});

describe('gates', () => {
  const rows = () => rowsOf('gates', ({ fitting }) => fitting.startsWith('circular gate with recess'));

  test('with slot, by opening: Idelchik 9-6', () => {
    for (const { h_over_D, K } of rows()) expect(tables.gate(h_over_D).k).toBeCloseTo(K!, 6);
    expect(tables.gate(null).k).toBe(0.05);
  });

  test('between rows on the logarithm, rising without end as it closes', () => {
    expect(tables.gate(0.45).k).toBeCloseTo(Math.sqrt(4.7 * 2.35), 9);
    let before = 0;
    for (let opening = 1; opening >= 0; opening -= 0.01) {
      const { k } = tables.gate(opening);
      expect(k).toBeGreaterThan(before * 0.999999);
      expect(Number.isFinite(k)).toBe(true);
      before = k;
    }
  });

  test('a gate without slot is within the doubt where dust gates stand half open', () => {
    for (const { h_over_D, K } of rowsOf('gates', ({ fitting }) => fitting === 'circular slide gate, no recess')) {
      if (h_over_D! > 0.7) continue;
      const { k, doubt } = tables.gate(h_over_D);
      expect(Math.abs(Math.log(K! / k))).toBeLessThan(2 * doubt);
    }
  });
});

describe('changes of diameter', () => {
  const [small, large] = [0.1, 0.1];

  test('widening cones: Crane; a sudden step is Borda–Carnot to 1e-6', () => {
    for (const row of rowsOf('expansion', ({ method }) => method === 'Crane' || method === 'exact momentum')) {
      // The file rounds 2/3 to 0.6667.
      const ratio = row['d_small/d_large']!;
      const shape = { fromDiameter_m: small * ratio, toDiameter_m: large, coneAngle_deg: row.included_angle ?? 180 };
      expect(Math.abs(tables.reducer(shape).k - row.K_on_small!)).toBeLessThan(2e-6);
    }
  });

  test('narrowing cones and steps: Crane', () => {
    for (const row of rowsOf('contraction', ({ method }) => method === 'Crane')) {
      const ratio = row['d_small/d_large']!;
      const shape = { fromDiameter_m: large, toDiameter_m: small * ratio, coneAngle_deg: row.included_angle ?? 180 };
      expect(Math.abs(tables.reducer(shape).k - row.K_on_small!)).toBeLessThan(2e-6);
    }
  });

  test('no change loses nothing; an unknown cone is a short one with more doubt', () => {
    expect(tables.reducer({ fromDiameter_m: 0.1, toDiameter_m: 0.1 }).k).toBe(0);
    const shape = { fromDiameter_m: 0.1, toDiameter_m: 0.15 };
    expect(tables.reducer(shape).k).toBe(tables.reducer({ ...shape, coneAngle_deg: 45 }).k);
    expect(tables.reducer(shape).doubt).toBeGreaterThan(tables.reducer({ ...shape, coneAngle_deg: 45 }).doubt);
  });
});

describe('what surrounds the blower', () => {
  test('elbow at the inlet by radius ratio: ASHRAE 1988', () => {
    for (const { radius_over_height, K_no_duct } of workshop.inlet_elbows!.rows) {
      expect(fittingRecord('inlet-elbow')!.coefficient({ diameter_m: 0.2, radiusRatio: radius_over_height }).k).toBe(
        K_no_duct,
      );
    }
  });

  test('caps and stack heads: ACGIH', () => {
    const shape = { diameter_m: 0.2 };
    const cap = rowsOf('hose_and_stack', ({ fitting }) => fitting === 'weather cap, 0.75 D above')[0]!;
    expect(fittingRecord('weather-cap')!.coefficient(shape).k).toBe(cap.K);
    expect(fittingRecord('stack-head')!.coefficient(shape).k).toBe(0);
  });

  test('straight through a tee: the run of a 90° tee with a tenth of the flow from the branch', () => {
    const rows = rowsOf('branch_entry_computed', (row) => row.angle === 90 && row['Q_branch/Q_comb'] === 0.1);
    const { k } = fittingRecord('tee-through')!.coefficient({ diameter_m: 0.2 });
    for (const row of rows) expect(k).toBeCloseTo(row.K_run_on_combined_velocity!, 6);
  });
});

test('every row names its source and has a doubt unless it loses nothing', () => {
  const shape = { diameter_m: 0.125 };
  const rows = [
    ...FITTING_NAMES.map((name) => fittingRecord(name)!.coefficient(shape)),
    ...Object.values(tables.ENTRIES).map(({ coefficient }) => coefficient),
    ...Object.values(MITRES).flatMap((byAngle) => Object.values(byAngle)),
    tables.gate(0.5),
    tables.branchEntry(30),
    tables.reducer({ fromDiameter_m: 0.1, toDiameter_m: 0.2 }),
  ];
  for (const { k, doubt, source } of rows) {
    expect(source.length).toBeGreaterThan(10);
    if (k > 0) expect(doubt).toBeGreaterThan(0.04);
  }
});
