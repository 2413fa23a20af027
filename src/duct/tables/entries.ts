import { alongRows, type Coefficient, type Rows } from './coefficient.ts';

/**
 * Where room air enters a duct, on the velocity pressure of the duct.
 * Rows and sources: fixtures/reference/fittings.json (`entries_handbook`, `entries_computed`), machine ports:
 * fixtures/reference/workshop.json (`machine_ports`).
 */
export const ENTRIES = {
  plain: {
    label: 'plain pipe end',
    coefficient: {
      k: 0.93,
      doubt: 0.12,
      source:
        'ACGIH Industrial Ventilation (recalled; entry coefficient 0.72); thin walls 1.0, thick walls 0.72 (Idelchik)',
    },
  },
  flanged: {
    label: 'pipe end with a flange, or flush with a wall',
    coefficient: {
      k: 0.5,
      doubt: 0.07,
      source: 'Idelchik diagram 3-1 by ASHRAE 1-1: flush sharp entry; ACGIH 0.49, Rennels 0.57',
    },
  },
  'bell-mouth': {
    label: 'bell mouth',
    coefficient: {
      k: 0.03,
      doubt: 0.7,
      source: 'Idelchik diagram 3-4 by ASHRAE 1-2, radius a fifth of the diameter or more; ACGIH 0.04',
    },
  },
  'tapered-hood': {
    label: 'tapered hood',
    coefficient: {
      k: 0.15,
      doubt: 0.6,
      source:
        'ACGIH Industrial Ventilation (recalled): round taper of 90°; 0.06 at 45°, 0.5 at 180°; 29 CFR 1910.94 asks 0.45 for grinders',
    },
  },
  'grinder-hood': {
    label: 'grinder hood, straight take-off',
    coefficient: {
      k: 0.65,
      doubt: 0.15,
      source: '29 CFR 1910.94(b): hood of a grinding wheel, straight take-off 0.65',
    },
  },
  'grinder-hood-tapered': {
    label: 'grinder hood, tapered take-off',
    coefficient: {
      k: 0.45,
      doubt: 0.15,
      source: '29 CFR 1910.94(b): hood of a grinding wheel, tapered take-off 0.45; ACGIH 0.40 (recalled)',
    },
  },
  booth: {
    label: 'booth, pipe straight out of its wall',
    coefficient: {
      k: 0.5,
      doubt: 0.2,
      source: 'ACGIH Industrial Ventilation (recalled): standard booth; the same as a flush sharp entry, Idelchik 0.50',
    },
  },
  'settling-trap': {
    label: 'trap or settling box with a tapered outlet',
    coefficient: {
      k: 1.5,
      doubt: 0.3,
      source: 'ACGIH Industrial Ventilation (recalled): trap or settling chamber with tapered take-off 1.5',
    },
  },
  'machine-port': {
    label: "a machine's own port",
    coefficient: {
      k: 2,
      doubt: 0.55,
      source:
        'connection pressures in manuals of European woodworking machines at 20 m/s, 530–1200 Pa, less the velocity pressure: 1.2–4',
    },
  },
} as const satisfies Record<string, { label: string; coefficient: Coefficient }>;

/** Round tapered hoods, face at least twice the duct's area, by whole angle [degrees]; recalled from ACGIH. */
// prettier-ignore
export const TAPERED_HOODS: Rows = [[15, 0.15], [30, 0.08], [45, 0.06], [60, 0.08], [90, 0.15], [120, 0.26], [150, 0.4], [180, 0.5]];

/** Bell mouths without an end wall, by radius of the lip / diameter of the duct. */
// prettier-ignore
export const BELL_MOUTHS: Rows = [
  [0, 1], [0.01, 0.87], [0.02, 0.74], [0.03, 0.61], [0.04, 0.51], [0.05, 0.4], [0.06, 0.32], [0.08, 0.2], [0.1, 0.15], [0.12, 0.1], [0.16, 0.06], [0.2, 0.03],
];

/** A name in the table of entries. */
export type EntryName = keyof typeof ENTRIES;
/** All names in the table of entries, in its order. */
export const ENTRY_NAMES = Object.keys(ENTRIES) as [EntryName, ...EntryName[]];

/** How an entry is made, beyond its name: whole angle of a tapered hood [degrees], lip radius of a bell mouth / diameter [-]. */
export type EntryShape = { hoodAngle_deg?: number | null; lipRadiusRatio?: number | null };

/** Loss coefficient of a named entry; undefined when the table does not know the name. A name left out is a plain end. */
export function entryCoefficient(name: string | null | undefined, shape: EntryShape = {}): Coefficient | undefined {
  if (name == null) return { ...ENTRIES.plain.coefficient, doubt: 0.5 };
  if (!Object.hasOwn(ENTRIES, name)) return undefined;
  if (name === 'tapered-hood' && shape.hoodAngle_deg != null)
    return {
      k: alongRows(TAPERED_HOODS, shape.hoodAngle_deg),
      doubt: 0.4,
      source: 'ACGIH Industrial Ventilation (recalled): round tapered hoods',
    };
  if (name === 'bell-mouth' && shape.lipRadiusRatio != null)
    return {
      k: alongRows(BELL_MOUTHS, shape.lipRadiusRatio),
      doubt: shape.lipRadiusRatio < 0.12 ? 0.25 : 0.7,
      source: 'Idelchik diagram 3-4 by ASHRAE 1-2: bell mouth without an end wall',
    };
  return ENTRIES[name as EntryName].coefficient;
}
