import { CountType, InitHydOption, LinkProperty, NodeProperty, Project, Workspace } from 'epanet-js';
import type { ReferenceNetwork } from './network-form.ts';

/**
 * The reference networks put to a general pipe-network engine (EPANET 2.3, D-W friction by Swamee–Jain). How air is said in
 * the engine's words is the `mapping` of fixtures/reference/network.json, source C_epanet.
 */

/** The engine works with 32.2 ft/s2 [m/s2]. */
const ENGINE_GRAVITY = 32.2 * 0.3048;
/** The engine's constant for 8/(g·π²) in minor losses, 0.02517, against the exact value: 1.3e-4 too small [-]. */
export const ENGINE_MINOR_LOSS_FACTOR = 0.02517 / (8 / (32.2 * Math.PI ** 2));

const row = (...cells: (string | number)[]): string => cells.join('\t');

/** Input file of the engine; closed branches are left out, so are nodes that then hang on nothing. */
export function engineInput({ branches, fan, rho, mu }: ReferenceNetwork): string {
  const open = branches.filter((branch) => branch.open);
  const nodes = [...new Set(['F1', 'F2', ...open.flatMap(({ from, to }) => [from, to])])].filter((id) => id !== 'AMB');
  const head = (pressure_Pa: number): number => pressure_Pa / (rho * ENGINE_GRAVITY);
  const minorLoss = (K: Record<string, number>): number => Object.values(K).reduce((sum, k) => sum + k, 0);
  return [
    '[JUNCTIONS]',
    ...nodes.map((id) => row(id, 0, 0)),
    '[RESERVOIRS]',
    row('AMB', 0),
    '[PIPES]',
    ...open.map(({ id, from, to, L, D, eps, K }) => row(id, from, to, L, D * 1000, eps * 1000, minorLoss(K), 'Open')),
    '[PUMPS]',
    row('FAN', 'F1', 'F2', 'HEAD', 'CURVE'),
    '[CURVES]',
    ...fan.points_Q_m3_s__ptotal_Pa.map(([flow, pressure]) => row('CURVE', flow * 3600, head(pressure))),
    '[OPTIONS]',
    row('UNITS', 'CMH'),
    row('HEADLOSS', 'D-W'),
    row('VISCOSITY', mu / rho / 1.0219334e-6),
    row('ACCURACY', 1e-5),
    row('HEADERROR', 1e-7),
    row('FLOWCHANGE', 1e-8),
    row('TRIALS', 200),
    row('UNBALANCED', 'STOP'),
    '[TIMES]',
    row('DURATION', 0),
    '[END]',
  ].join('\n');
}

export type Engine = {
  /** solves again from the flows it has */
  solve(): void;
  /** flow of a branch or of the FAN [m3/s] */
  flow_m3_s(id: string): number;
  /** total pressure at a node [Pa] */
  pressure_Pa(id: string): number;
  linkCount(): number;
  setFanSpeed(ratio: number): void;
  close(): void;
};

/** Loads a network into the engine once. */
export async function loadEngine(reference: ReferenceNetwork): Promise<Engine> {
  const workspace = new Workspace();
  await workspace.loadModule();
  const project = new Project(workspace);
  workspace.writeFile('network.inp', engineInput(reference));
  project.open('network.inp', 'report.rpt', 'out.bin');
  project.openH();
  project.initH(InitHydOption.InitFlow);
  project.runH();
  const fan = project.getLinkIndex('FAN');
  return {
    solve() {
      project.initH(InitHydOption.NoSave);
      project.runH();
    },
    flow_m3_s: (id) => project.getLinkValue(project.getLinkIndex(id), LinkProperty.Flow) / 3600,
    pressure_Pa: (id) =>
      project.getNodeValue(project.getNodeIndex(id), NodeProperty.Head) * reference.rho * ENGINE_GRAVITY,
    linkCount: () => project.getCount(CountType.LinkCount),
    setFanSpeed: (ratio) => project.setLinkValue(fan, LinkProperty.InitSetting, ratio),
    close() {
      project.closeH();
      project.close();
    },
  };
}
