import { describe, expect, test } from 'vitest';
import { compileNetwork, solveAtFlow } from '../../src/duct/index.ts';
import { darcyFrictionFactor, straightPipeLoss, SURFACES } from '../../src/pipe/index.ts';
import { readReference } from './read-reference.ts';

/** fixtures/reference/friction.json and workshop.json; sources and tolerances stand there by section. */

type Friction = {
  sections: {
    colebrook_grid: { eD: number[]; rows: { Re: number; f: number[] }[] };
    laminar: { rows: { Re: number; f: number }[] };
    transition: { rows: ({ Re: number; eD: number; f_laminar: number } & Record<string, number>)[] };
    duct_gradient: {
      rho: number;
      mu: number;
      rows: { D_m: number; Q_m3_s: number; eps_m: number; dp_per_m: number }[];
    };
    roughness: {
      rows: { material: string; min_mm: number | null; max_mm: number | null; typical_mm: number | null }[];
    };
  };
};
const { sections } = readReference<Friction>('friction.json');
type Workshop = {
  sections: {
    roughness: { rows: { surface: string; min_mm: number; max_mm: number }[] };
    hose_gradient: { rows: { diameter_m: number; velocity_m_s: number; gradient_Pa_m: number }[] };
  };
};
const workshop = readReference<Workshop>('workshop.json').sections;

describe('friction factor', () => {
  test('Colebrook grid, three solvers agreeing to 3e-12: 1e-6', () => {
    const { eD, rows } = sections.colebrook_grid;
    for (const { Re, f } of rows) {
      f.forEach((expected, i) => {
        expect(Math.abs(darcyFrictionFactor(Re, eD[i]!) / expected - 1), `Re ${Re}, ε/D ${eD[i]}`).toBeLessThan(1e-6);
      });
    }
  });

  test('laminar, Hagen–Poiseuille: 1e-6', () => {
    for (const { Re, f } of sections.laminar.rows)
      expect(Math.abs(darcyFrictionFactor(Re, 0.01) / f - 1)).toBeLessThan(1e-6);
  });

  test('between laminar and turbulent only a bracket is agreed', () => {
    for (const { Re, eD, ...values } of sections.transition.rows) {
      const found = darcyFrictionFactor(Re, eD);
      expect(found).toBeGreaterThanOrEqual(values.f_laminar! * (1 - 1e-7));
      expect(found).toBeLessThan(Math.max(...Object.values(values)));
    }
  });
});

describe('duct friction, pascals a metre: 1e-4', () => {
  const { rho, mu, rows } = sections.duct_gradient;
  const air = { density_kg_m3: rho, viscosity_Pa_s: mu, pressure_Pa: 101325 };

  test('straight pipe', () => {
    for (const { D_m, Q_m3_s, eps_m, dp_per_m } of rows) {
      const loss = straightPipeLoss({ length_m: 1, diameter_m: D_m, roughness_m: eps_m }, Q_m3_s, air);
      expect(Math.abs(loss / dp_per_m - 1), `${D_m} m, ${Q_m3_s} m3/s, ${eps_m} m`).toBeLessThan(1e-4);
    }
  });

  test("the tree solver's own fast friction, warm and cold", () => {
    for (const { D_m, Q_m3_s, eps_m, dp_per_m } of rows) {
      const pipe = { kind: 'pipe' as const, length_m: 1, diameter_m: D_m, roughness_m: eps_m };
      const ductwork = { sections: [{ id: 'a', into: 'blower', pickup: {}, elements: [pipe] }] };
      const network = compileNetwork(ductwork, { air, open: [], filterState: 'clean' });
      const state = solveAtFlow(network, Q_m3_s);
      expect(Math.abs(state.suction_Pa / dp_per_m - 1)).toBeLessThan(1e-4);
      const exact = state.suction_Pa;
      for (const detour of [0.995, 1.3, 0.2]) {
        solveAtFlow(network, Q_m3_s * detour, state);
        solveAtFlow(network, Q_m3_s, state);
        expect(Math.abs(state.suction_Pa / exact - 1)).toBeLessThan(2e-7);
      }
    }
  });
});

describe('surfaces', () => {
  /** Rows of friction.json that are the same material as a surface of the program. */
  const MATERIALS: Record<string, string[]> = {
    'galvanised-duct': [
      'Galvanised steel, round, longitudinal seams, 2.5 ft joint spacing (Wright friction chart)',
      'Galvanised steel (ventilation duct)',
    ],
    'spiral-duct': ['Galvanised steel, spiral seam, 10 ft joint spacing (Jones 1979)'],
    'pvc-pipe': ['PVC plastic pipe (Swim 1982)'],
    'drain-pipe': ['PVC drainage pipe with socket joints'],
    'flexible-hose': ['Flexible duct, metallic or fabric corrugated, fully extended'],
    'smooth-bore-hose': ['Flexible duct, clear wire-reinforced hose, smooth bore, straight'],
    'aluminium-flex': ['Flexible duct, metallic or fabric corrugated, fully extended'],
  };

  test.each(Object.entries(SURFACES))('%s lies inside a published range and names its source', (name, surface) => {
    const rows = [
      ...sections.roughness.rows.filter(({ material }) => MATERIALS[name]?.includes(material)),
      ...workshop.roughness.rows.filter((row) => row.surface === name),
    ];
    expect(rows.length, 'reference rows of this surface').toBeGreaterThan(0);
    // A row in feet rounds 0.15 mm to 0.1524.
    const inside = rows.some(
      ({ min_mm, max_mm }) => surface.roughness_m * 1000 >= min_mm! * 0.98 && surface.roughness_m * 1000 <= max_mm!,
    );
    expect(inside).toBe(true);
    expect(surface.source.length).toBeGreaterThan(40);
    expect(surface.doubt).toBeGreaterThanOrEqual(0.3);
  });

  test('ribbed hose lies between the two published gradients, and its doubt reaches both', () => {
    const air = { density_kg_m3: 1.2, viscosity_Pa_s: 1.8134e-5, pressure_Pa: 101325 };
    const { roughness_m, doubt } = SURFACES['flexible-hose'];
    const gradients = workshop.hose_gradient.rows.map(({ gradient_Pa_m }) => gradient_Pa_m);
    const { diameter_m, velocity_m_s } = workshop.hose_gradient.rows[0]!;
    const flow = (velocity_m_s * Math.PI * diameter_m ** 2) / 4;
    const gradient = (sds: number) =>
      straightPipeLoss({ length_m: 1, diameter_m, roughness_m: roughness_m * Math.exp(sds * doubt) }, flow, air);
    expect(gradient(0)).toBeGreaterThan(Math.min(...gradients));
    expect(gradient(0)).toBeLessThan(Math.max(...gradients));
    expect(gradient(-2)).toBeLessThan(Math.min(...gradients));
    expect(gradient(2)).toBeGreaterThan(Math.max(...gradients));
  });
});
