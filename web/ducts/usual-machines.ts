import type { MachineKindName } from './layout/machine-kinds.ts';

/** Where a usual flow comes from: makers' manuals, what shops do, or a rule. */
export type Basis = 'manuals' | 'practice' | 'rule';

/**
 * Air a machine of a kind usually asks for [m3/s] and the width of its port [m], low and high; every figure can be
 * overwritten. Ports are common practice, up to the widest of fixtures/reference/workshop.json (`machine_ports`).
 */
export type UsualFlow = {
  low_m3_s: number;
  high_m3_s: number;
  basis: Basis;
  source: string;
  port_m: readonly [low: number, high: number];
};

const CFM = 0.3048 ** 3 / 60;
const cfm = (
  low: number,
  high: number,
  basis: Basis,
  port_m: UsualFlow['port_m'],
  source = 'common practice',
): UsualFlow => ({
  low_m3_s: low * CFM,
  high_m3_s: high * CFM,
  basis,
  source,
  port_m,
});

const MANUALS = 'manuals of woodworking machines sold in the USA; they differ by half again among themselves';

export const USUAL_FLOWS: Partial<Record<MachineKindName, UsualFlow>> = {
  'table-saw': cfm(350, 450, 'manuals', [0.1, 0.12], MANUALS),
  'band-saw': cfm(350, 450, 'practice', [0.1, 0.12], 'common practice, as for a table saw'),
  planer: cfm(400, 550, 'manuals', [0.1, 0.16], MANUALS),
  sander: cfm(450, 700, 'manuals', [0.1, 0.15], MANUALS),
  spindle: cfm(200, 350, 'manuals', [0.1, 0.12], MANUALS),
  lathe: cfm(350, 500, 'practice', [0.1, 0.15]),
  drill: cfm(150, 300, 'practice', [0.06, 0.1]),
  grinder: cfm(
    220,
    390,
    'rule',
    [0.075, 0.1],
    '29 CFR 1910.94(b): wheels to 9 in 220, to 16 in 390 cubic feet a minute',
  ),
  sweep: cfm(350, 800, 'practice', [0.1, 0.15]),
};

/** The middle, rounded to 10 m3/h as somebody would say it [m3/s]. */
export const usualMiddle_m3_s = ({ low_m3_s, high_m3_s }: UsualFlow): number =>
  Math.round(((low_m3_s + high_m3_s) / 2) * 360) / 360;
