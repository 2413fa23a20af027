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
      doubt: 0.5,
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

/** A name in the table of entries. */
export type EntryName = keyof typeof ENTRIES;
/** All names in the table of entries, in its order. */
export const ENTRY_NAMES = Object.keys(ENTRIES) as [EntryName, ...EntryName[]];

/** Loss coefficient of a named entry; undefined when the table does not know the name. A name left out is a plain end. */
export function entryCoefficient(
  name: string | null | undefined,
  hoodAngle_deg?: number | null,
): Coefficient | undefined {
  if (name == null) return { ...ENTRIES.plain.coefficient, doubt: 0.5 };
  if (!Object.hasOwn(ENTRIES, name)) return undefined;
  const { coefficient } = ENTRIES[name as EntryName];
  if (name !== 'tapered-hood' || hoodAngle_deg == null) return coefficient;
  return {
    k: alongRows(TAPERED_HOODS, hoodAngle_deg),
    doubt: 0.4,
    source: 'ACGIH Industrial Ventilation (recalled): round tapered hoods',
  };
}
