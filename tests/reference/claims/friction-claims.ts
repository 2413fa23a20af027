import { darcyFrictionFactor, straightPipeLoss, SURFACES, type Surface } from '../../../src/pipe/index.ts';
import type { Claim, Row } from './claim.ts';

/** fixtures/reference/friction.json. */

/** Rows that are the same material as a surface of the program. */
export const SURFACE_ROWS: Partial<Record<Surface, string[]>> = {
  'galvanised-duct': [
    'Galvanised steel, round, longitudinal seams, 2.5 ft joint spacing (Wright friction chart)',
    'Galvanised steel (ventilation duct)',
    'Galvanised iron (Moody)',
    'Galvanised duct, design value used in dust-extraction practice',
    'Galvanised steel, round, longitudinal seams, various joints 4 ft apart',
    'Galvanized steel tubes, Ordinary galvanization',
    'Galvanized sheet steel, New',
  ],
  'spiral-duct': [
    'Galvanised steel, spiral seam, 10 ft joint spacing (Jones 1979)',
    'Galvanised steel, spiral seam with 1-3 ribs, beaded couplings 12 ft',
  ],
  'pvc-pipe': ['PVC plastic pipe (Swim 1982)', 'PVC, PE and other smooth plastic pipe'],
  'drain-pipe': ['PVC drainage pipe with socket joints'],
  'flexible-hose': [
    'Flexible duct, metallic or fabric corrugated, fully extended',
    'PE corrugated (single wall) drainage hose',
  ],
  'smooth-bore-hose': [
    'Flexible duct, clear wire-reinforced hose, smooth bore, straight',
    'Flexible duct, non-metallic with wire, fully extended',
  ],
};

/** Surfaces nobody builds these ducts of, or that no row of the job contract's list stands for. */
const ELSEWHERE = [
  'Commercial steel (Moody 1944)',
  'Aluminium, round, longitudinal seam, crimped slip joints',
  'Galvanised steel, rectangular, various joints 4 ft',
  'Galvanised steel, spiral corrugated, beaded slip couplings 10 ft (Kulkarni 2009)',
  'Drawn tubing',
  'Steel commercial pipe',
  'Galvanized steel tubes, Bright galvanization; new',
  'Galvanized sheet steel, Used previously for water',
  'Internally plastic-coated pipe',
  'PE corrugated drainage pipe, smooth inner wall',
];

/** The end of a row's range that lies nearest to a roughness; the roughness itself inside [mm]. */
function nearestIn({ min_mm, max_mm, typical_mm }: Row, roughness_mm: number): number {
  if (min_mm == null || max_mm == null) return typical_mm;
  return Math.min(Math.max(roughness_mm, min_mm), max_mm);
}

const ROUGHNESS: Claim[] = Object.entries(SURFACE_ROWS).map(([name, materials]) => ({
  section: 'roughness',
  rows: (row) => materials.includes(row.material),
  near: (row) => {
    const { roughness_m, doubt } = SURFACES[name as Surface];
    return [{ k: 1000 * roughness_m, doubt }, nearestIn(row, 1000 * roughness_m)];
  },
}));

/** Every value of a row with a list is its own; the worst of them stands for the row. */
const worst = (pairs: [number, number][]): [number, number] =>
  pairs.reduce((a, b) => (Math.abs(b[0] / b[1] - 1) > Math.abs(a[0] / a[1] - 1) ? b : a));

export const frictionClaims = (grid: readonly number[], duct: { rho: number; mu: number }): readonly Claim[] => [
  {
    section: 'colebrook_grid',
    rows: () => true,
    table: 'Colebrook',
    within: 1e-7,
    is: ({ Re, f }) => worst(f.map((each: number, i: number) => [darcyFrictionFactor(Re, grid[i]!), each])),
  },
  {
    section: 'laminar',
    rows: () => true,
    table: 'laminar',
    within: 1e-6,
    is: ({ Re, f }) => [darcyFrictionFactor(Re, 0.01), f],
  },
  {
    section: 'transition',
    rows: () => true,
    table: 'blend',
    within: 0,
    // only a bracket is agreed: what lies inside is held against itself, what lies outside against the nearer end
    is: ({ Re, eD, ...values }) => {
      const ours = darcyFrictionFactor(Re, eD);
      const ends = Object.values(values as Record<string, number>);
      return [ours, Math.min(Math.max(ours, Math.min(...ends) * (1 - 1e-7)), Math.max(...ends))];
    },
  },
  {
    section: 'explicit_formula_error',
    rows: () => true,
    aside: 'the program solves Colebrook itself and needs no explicit formula',
  },
  {
    section: 'duct_gradient',
    rows: () => true,
    table: 'pascals a metre, relative',
    within: 1e-4,
    is: ({ D_m, Q_m3_s, eps_m, dp_per_m }) => {
      const air = { density_kg_m3: duct.rho, viscosity_Pa_s: duct.mu };
      return [straightPipeLoss({ length_m: 1, diameter_m: D_m, roughness_m: eps_m }, Q_m3_s, air) / dp_per_m, 1];
    },
  },
  ...ROUGHNESS,
  {
    section: 'roughness',
    rows: (row) => ELSEWHERE.includes(row.material),
    aside: 'no surface of the job contract; such a pipe is told with its own roughness',
  },
  {
    section: 'other_duct_friction',
    rows: (row) => row.D_m !== undefined,
    table: 'handbook shortcut, relative',
    within: 0.15,
    is: ({ D_m, v_m_s, loss_VP_per_m_loeffler_galv }) => {
      const air = { density_kg_m3: 1.2, viscosity_Pa_s: 1.8134e-5 };
      const flow_m3_s = (v_m_s * Math.PI * D_m ** 2) / 4;
      const { roughness_m } = SURFACES['galvanised-duct'];
      const loss_Pa = straightPipeLoss({ length_m: 1, diameter_m: D_m, roughness_m }, flow_m3_s, air);
      return [loss_Pa / (0.6 * v_m_s ** 2) / loss_VP_per_m_loeffler_galv, 1];
    },
  },
  {
    section: 'other_duct_friction',
    rows: (row) => row.D_m === undefined,
    aside: 'words and a formula about squeezed hose: hose is taken as pulled out, and its surface says so',
  },
];
