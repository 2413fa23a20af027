import { darcyFrictionFactor } from '../../src/pipe/index.ts';
import { compileNetwork, type Ductwork, type Network } from '../../src/duct/index.ts';
import { airOf, REFERENCE_NETWORKS, suctionDuctwork, type Branch, type ReferenceNetwork } from '../reference/network-form.ts';

/** The 40-branch reference network (N12), as it stands and with its ten unequal filters as one. */

export const FORTY_BRANCHES: ReferenceNetwork = REFERENCE_NETWORKS.find(({ id }) => id === 'N12')!;

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
  return { id: 'FLT', from: first.from, to: first.to, L: 0.001, D: first.D, eps: first.eps, K: { filters: k }, open: true };
}

/** N12 with one branch in place of the ten filters: what a job can say, and what both solvers are given. */
export function withOneFilter(reference: ReferenceNetwork): ReferenceNetwork {
  const filters = reference.branches.filter(({ from }) => from === 'BOX');
  return { ...reference, branches: [...reference.branches.filter(({ from }) => from !== 'BOX'), asOneBranch(filters, reference)] };
}

/** The same in a job's words, with its way out as the run behind the blower. */
export function jobDuctwork(reference: ReferenceNetwork): Ductwork {
  const wayOut = ['F2', 'BOX'].map((node) => reference.branches.find(({ from }) => from === node)!);
  return {
    ...suctionDuctwork(reference),
    discharge: wayOut.flatMap(({ L, D, eps, K }) => [
      { kind: 'pipe' as const, length_m: L, diameter_m: D, roughness_m: eps },
      ...Object.entries(K).map(([fitting, k]) => ({ kind: 'fitting' as const, fitting, diameter_m: D, k })),
    ]),
  };
}

export function compileJob(reference: ReferenceNetwork): Network {
  const ductwork = jobDuctwork(reference);
  const open = ductwork.sections.map(({ id }) => id);
  return compileNetwork(ductwork, { air: airOf(reference), open, filterState: 'clean' });
}
