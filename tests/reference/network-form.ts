import { readFileSync } from 'node:fs';
import type { Air } from '../../src/air/air.ts';
import { darcyFrictionFactor } from '../../src/pipe/index.ts';
import { compileNetwork, type Ductwork, type Element, type FanCurve, type Network } from '../../src/duct/index.ts';

/** The twelve networks of fixtures/reference/network.json, and how they are said in a job's words. */

export type Branch = {
  id: string;
  from: string;
  to: string;
  L: number;
  D: number;
  eps: number;
  K: Record<string, number>;
  open: boolean;
  Q?: number;
  f?: number;
  dp?: number;
  Q_epanet?: number;
};
export type ReferenceNetwork = {
  id: string;
  rho: number;
  mu: number;
  fan: { outlet_diameter_m: number; points_Q_m3_s__ptotal_Pa: [number, number][] };
  operating_point: {
    Q_fan: number;
    fan_total_pressure: number;
    fan_static_pressure: number;
    Q_fan_epanet: number;
    rise_epanet: number;
  };
  differences: { A_vs_B_flow: number };
  node_pressure_A: Record<string, number>;
  branches: Branch[];
};

export const { networks: REFERENCE_NETWORKS } = JSON.parse(
  readFileSync(new URL('../../fixtures/reference/network.json', import.meta.url), 'utf8'),
) as { networks: ReferenceNetwork[] };

export const airOf = ({ rho, mu }: ReferenceNetwork): Air => ({
  density_kg_m3: rho,
  viscosity_Pa_s: mu,
  pressure_Pa: 101325,
});

/** A branch's elements: its pipe, and each of its minor losses as a fitting with its own k. */
const elementsOf = ({ L, D, eps, K }: Branch): Element[] => [
  { kind: 'pipe', length_m: L, diameter_m: D, roughness_m: eps },
  ...Object.entries(K).map(([fitting, k]): Element => ({ kind: 'fitting', fitting, diameter_m: D, k })),
];

/** All branches that lead to `root`, as sections; a branch from the room is a pick-up. */
function sectionsTowards(root: string, branches: Branch[]): Ductwork['sections'] {
  const leaving = new Map(branches.map((branch) => [branch.from, branch.id]));
  const reaches = (node: string): boolean => {
    for (let at = node; at !== root;) {
      const next = branches.find((branch) => branch.from === at && branch.from !== 'AMB');
      if (next === undefined) return false;
      at = next.to;
    }
    return true;
  };
  return branches
    .filter(({ to }) => to !== 'AMB' && reaches(to))
    .map((branch) => ({
      id: branch.id,
      into: branch.to === root ? 'blower' : leaving.get(branch.to)!,
      pickup: branch.from === 'AMB' ? {} : null,
      gate: branch.open ? null : {},
      elements: elementsOf(branch),
    }));
}

/** The suction side as a job has it. */
export const suctionDuctwork = ({ branches }: ReferenceNetwork): Ductwork => ({
  sections: sectionsTowards('F1', branches),
});

/**
 * The way out of these networks can branch, which a job's cannot. Turned round it is a suction side again, with the same
 * losses at the same flows.
 */
export const wayOutDuctwork = ({ branches }: ReferenceNetwork): Ductwork => ({
  sections: sectionsTowards(
    'F2',
    branches.map((branch) => ({ ...branch, from: branch.to, to: branch.from })),
  ),
});

export function compileReference(reference: ReferenceNetwork, ductwork: Ductwork): Network {
  const open = ductwork.sections.filter(({ gate }) => gate == null).map(({ id }) => id);
  return compileNetwork(ductwork, { air: airOf(reference), open, filterState: 'clean' });
}

/** Straight lines between the listed points, as the file says. */
export function fanOf({ fan }: ReferenceNetwork): FanCurve {
  const points = fan.points_Q_m3_s__ptotal_Pa;
  const at = (q: number): number => {
    let i = 1;
    while (i < points.length - 1 && q > points[i]![0]) i++;
    return i;
  };
  const slope = (i: number): number => (points[i]![1] - points[i - 1]![1]) / (points[i]![0] - points[i - 1]![0]);
  return {
    pressure_Pa: (q) => points[at(q)]![1] + slope(at(q)) * (q - points[at(q)]![0]),
    slope: (q) => slope(at(q)),
  };
}

const area_m2 = (diameter_m: number): number => (Math.PI / 4) * diameter_m ** 2;

/** Branches side by side from the box to the room lose like one: 1/√k adds up (fixtures/reference/network.json, `parallel_rule`). */
function asOneBranch(branches: Branch[], { rho, mu }: ReferenceNetwork): Branch {
  const first = branches[0]!;
  const inverseRoots = branches.map(({ L, D, eps, K, Q }) => {
    const reynolds = (rho * (Q! / area_m2(D)) * D) / mu;
    const k = Object.values(K).reduce((sum, each) => sum + each, 0) + (darcyFrictionFactor(reynolds, eps / D) * L) / D;
    return 1 / Math.sqrt(k);
  });
  const k = inverseRoots.reduce((sum, each) => sum + each, 0) ** -2;
  return {
    id: 'FLT',
    from: first.from,
    to: first.to,
    L: 0.001,
    D: first.D,
    eps: first.eps,
    K: { filters: k },
    open: true,
  };
}

/** A network with one branch in place of its unequal filters, which is what a job can say. */
export function withOneFilter(reference: ReferenceNetwork): ReferenceNetwork {
  const filters = reference.branches.filter(({ from }) => from === 'BOX');
  if (filters.length === 0) return reference;
  return {
    ...reference,
    branches: [...reference.branches.filter(({ from }) => from !== 'BOX'), asOneBranch(filters, reference)],
  };
}

/** The same in a job's words, with its way out as the run behind the blower. */
export function jobDuctwork(reference: ReferenceNetwork): Ductwork {
  const wayOut = reference.branches.filter(({ from }) => from === 'F2' || from === 'BOX');
  return {
    ...suctionDuctwork(reference),
    discharge: wayOut.flatMap(({ L, D, eps, K }) => [
      { kind: 'pipe' as const, length_m: L, diameter_m: D, roughness_m: eps },
      ...Object.entries(K).map(([fitting, k]) => ({ kind: 'fitting' as const, fitting, diameter_m: D, k })),
    ]),
  };
}
