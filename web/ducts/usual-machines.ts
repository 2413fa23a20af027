import type { MachineKindName } from './layout/machine-kinds.ts';

/** Air a machine of a kind usually asks for [m3/s], low and high; every figure can be overwritten. */
export type UsualFlow = { low_m3_s: number; high_m3_s: number; source: string };

const CFM = 0.3048 ** 3 / 60;
const cfm = (low: number, high: number, source: string): UsualFlow => ({
  low_m3_s: low * CFM,
  high_m3_s: high * CFM,
  source,
});

const MANUALS = 'manuals of woodworking machines sold in the USA; they differ by half again among themselves';

export const USUAL_FLOWS: Partial<Record<MachineKindName, UsualFlow>> = {
  'table-saw': cfm(350, 450, MANUALS),
  'band-saw': cfm(350, 450, 'common practice, as for a table saw'),
  planer: cfm(400, 550, MANUALS),
  sander: cfm(450, 700, MANUALS),
  spindle: cfm(200, 350, MANUALS),
  lathe: cfm(350, 500, 'common practice'),
  drill: cfm(150, 300, 'common practice'),
  grinder: cfm(220, 390, '29 CFR 1910.94(b): wheels to 9 in 220, to 16 in 390 cubic feet a minute'),
  sweep: cfm(350, 800, 'common practice'),
};

/** The middle, rounded to 10 m3/h as somebody would say it [m3/s]. */
export const usualMiddle_m3_s = ({ low_m3_s, high_m3_s }: UsualFlow): number =>
  Math.round(((low_m3_s + high_m3_s) / 2) * 360) / 360;
