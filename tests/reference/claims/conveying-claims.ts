import { MATERIALS, type Material } from '../../../src/duct/index.ts';
import type { MachineKindName } from '../../../web/ducts/layout/machine-kinds.ts';
import { USUAL_FLOWS } from '../../../web/ducts/usual-machines.ts';
import type { Claim, Row } from './claim.ts';

/** fixtures/reference/conveying.json. A published range in which the program's value lies counts as equal to it. */

/** Classes of dust of the same stuff as a material of the program. */
export const CLASSES: Record<Material, string[]> = {
  'wood-shavings': ['heavy dusts'],
  'wood-dust': ['average industrial dust', 'fine dry dust: wood dust, lint'],
  'metal-grinding': ['grinding wheels: branch', 'grinding wheels: main'],
  'textile-lint': ['very fine light dust'],
  'light-powder': ['dry dusts and powders', 'dry dusts and powders: fine rubber, cotton, light shavings'],
};
const OF_PRACTICE: Record<string, Material> = {
  'mixed wood dust and shavings, branch': 'wood-shavings',
  'mixed wood dust and shavings, main': 'wood-shavings',
  'wood dust': 'wood-dust',
  'metal grinding': 'metal-grinding',
};

/** A speed of transport is known to a tenth, and to a quarter where fine dust may do with less: two deviations reach 12.5 m/s from 20. */
const SPEED_DOUBT = 0.1;
const FINE_DUST_DOUBT = 0.25;

const nearest = (value: number, low: number, high: number | null) => Math.max(low, Math.min(value, high ?? Infinity));

/** Machines of the recalled table that are a kind of the program; it calls for no more than a factor of 1.5 and says modern practice is up to twice. */
const MACHINES: [start: string, kind: MachineKindName][] = [
  ['table saw', 'table-saw'],
  ['jointer', 'planer'],
  ['disc sander', 'sander'],
  ['belt sander', 'sander'],
  ['drum sander', 'sander'],
  ['router', 'spindle'],
  ['lathe', 'lathe'],
];
const kindOf = (row: Row) => MACHINES.find(([start]) => row.machine.startsWith(start))?.[1];
const FACTOR_OF_MACHINES = 1.5;

export const CONVEYING_CLAIMS: readonly Claim[] = [
  ...Object.entries(CLASSES).map(([material, classes]): Claim => ({
    section: 'transport_velocity',
    rows: (row) => classes.includes(row.class),
    near: (row) => {
      const k = MATERIALS[material as Material].minimumVelocity_m_s;
      const doubt = row.class.startsWith('fine dry dust') ? FINE_DUST_DOUBT : SPEED_DOUBT;
      return [{ k, doubt }, nearest(k, row.m_s[0], row.m_s[1])];
    },
  })),
  {
    section: 'transport_velocity',
    rows: (row) => /^(vapour|fumes|smoke)/.test(row.class),
    aside: 'gases and fumes settle nowhere; no material of the program',
  },
  {
    section: 'transport_velocity',
    rows: (row) => row.class === 'heavy or moist',
    aside: 'damp and sticky goods are told with a speed of their own',
  },
  {
    section: 'wood_transport_practice',
    rows: (row) => row.dust in OF_PRACTICE,
    table: 'materials',
    within: 2,
    is: (row) => [MATERIALS[OF_PRACTICE[row.dust]!].minimumVelocity_m_s, row.m_s],
  },
  {
    section: 'wood_transport_practice',
    rows: (row) => row.dust === 'moist chips',
    aside: 'damp goods are told with a speed of their own',
  },
  {
    section: 'capture_velocity',
    rows: () => true,
    aside: 'the job states the air each machine needs; hoods in the open are not worked out',
  },
  {
    section: 'grinder_exhaust',
    rows: (row) => row.table === 'G-4' && ['to 9', '9-16'].includes(row.diameter_inch),
    table: 'usual machines',
    within: 1e-4,
    is: (row) => {
      const { low_m3_s, high_m3_s } = USUAL_FLOWS.grinder!;
      return [row.diameter_inch === 'to 9' ? low_m3_s : high_m3_s, row.m3_s];
    },
  },
  {
    section: 'grinder_exhaust',
    rows: (row) => !(row.table === 'G-4' && ['to 9', '9-16'].includes(row.diameter_inch)),
    aside: 'wheels and belts larger than a small workshop has; their flow is typed in',
  },
  {
    section: 'woodworking_exhaust',
    rows: (row) => kindOf(row) !== undefined,
    near: (row) => {
      const { low_m3_s, high_m3_s } = USUAL_FLOWS[kindOf(row)!]!;
      const k = nearest(row.m3_s, low_m3_s, high_m3_s);
      return [{ k, doubt: Math.log(FACTOR_OF_MACHINES) / 2 }, row.m3_s];
    },
  },
  {
    section: 'woodworking_exhaust',
    rows: (row) => kindOf(row) === undefined,
    aside: 'machines of industry, or of no kind the drawing knows; their flow is typed in',
  },
  { section: 'exposure_limits', rows: () => true, aside: 'the program judges no exposure and defers to local rules' },
  { section: 'cautions', rows: () => true, aside: 'words; they stand as cautions on the page' },
];
