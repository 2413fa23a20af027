import type { DoubtKind, LossPart } from '../elements/element.ts';
import { INLET_SWIRL, inletElbow } from './blower-inlets.ts';
import type { Coefficient } from './coefficient.ts';
import { elbow, hoseBend, mitre, pleatedElbow, type ElbowShape } from './elbows.ts';

/** One named fitting: what it is called, where its loss is booked, and its loss coefficient. */
export type FittingRecord = {
  label: string;
  part: LossPart;
  doubtKind: DoubtKind;
  coefficient(shape: ElbowShape): Coefficient;
};

const TEE_THROUGH: Coefficient = {
  k: 0.145,
  doubt: 0.5,
  source:
    'Crane after Idelchik, run of a 90° tee with a tenth of the flow from the branch; 0.05 capped, 0.3 with a fifth',
};

const WEATHER_CAP: Coefficient = {
  k: 0.18,
  doubt: 0.5,
  source:
    'ACGIH Industrial Ventilation (recalled): cap 0.75 diameters above the end; 0.73 at 0.5 diameters. It comes on top of the exit loss',
};

const LOW_WEATHER_CAP: Coefficient = {
  k: 0.73,
  doubt: 0.4,
  source: 'ACGIH Industrial Ventilation (recalled): cap 0.5 diameters above the end. It comes on top of the exit loss',
};

const STACK_HEAD: Coefficient = {
  k: 0,
  doubt: 0,
  source: 'ACGIH Industrial Ventilation (recalled): no-loss vertical stack head',
};

/** Named fittings. A new one is one row here and its rows in fixtures/reference. */
export const FITTINGS = {
  'elbow-90': { label: 'elbow, 90°', part: 'bends', doubtKind: 'elbow', coefficient: (s) => elbow(90, s) },
  'elbow-60': { label: 'elbow, 60°', part: 'bends', doubtKind: 'elbow', coefficient: (s) => elbow(60, s) },
  'elbow-45': { label: 'elbow, 45°', part: 'bends', doubtKind: 'elbow', coefficient: (s) => elbow(45, s) },
  'elbow-30': { label: 'elbow, 30°', part: 'bends', doubtKind: 'elbow', coefficient: (s) => elbow(30, s) },
  'pleated-elbow-90': {
    label: 'pleated elbow, 90°',
    part: 'bends',
    doubtKind: 'elbow',
    coefficient: (s) => pleatedElbow(90, s),
  },
  'pleated-elbow-45': {
    label: 'pleated elbow, 45°',
    part: 'bends',
    doubtKind: 'elbow',
    coefficient: (s) => pleatedElbow(45, s),
  },
  'mitre-90': { label: 'mitred corner, 90°', part: 'bends', doubtKind: 'elbow', coefficient: (s) => mitre(90, s) },
  'mitre-45': { label: 'mitred corner, 45°', part: 'bends', doubtKind: 'elbow', coefficient: (s) => mitre(45, s) },
  'hose-bend-90': { label: 'bend in a hose, 90°', part: 'hose', doubtKind: 'hose-bend', coefficient: hoseBend },
  'tee-through': {
    label: 'straight through a tee',
    part: 'other',
    doubtKind: 'branch-entry',
    coefficient: () => TEE_THROUGH,
  },
  'inlet-elbow': {
    label: "uneven air from an elbow right at the blower's inlet",
    part: 'other',
    doubtKind: 'inlet',
    coefficient: inletElbow,
  },
  'inlet-swirl': {
    label: "spinning air at the blower's inlet",
    part: 'other',
    doubtKind: 'inlet',
    coefficient: () => INLET_SWIRL,
  },
  'weather-cap': { label: 'rain cap on a stack', part: 'other', doubtKind: 'exit', coefficient: () => WEATHER_CAP },
  'weather-cap-low': {
    label: 'rain cap close above a stack',
    part: 'other',
    doubtKind: 'exit',
    coefficient: () => LOW_WEATHER_CAP,
  },
  'stack-head': { label: 'open stack head', part: 'other', doubtKind: 'exit', coefficient: () => STACK_HEAD },
} as const satisfies Record<string, FittingRecord>;

/** A name in the table of fittings. */
export type FittingName = keyof typeof FITTINGS;
/** All names in the table of fittings, in its order. */
export const FITTING_NAMES = Object.keys(FITTINGS) as [FittingName, ...FittingName[]];

/** The record of a fitting, or undefined when the table does not know the name. */
export const fittingRecord = (name: string): FittingRecord | undefined =>
  Object.hasOwn(FITTINGS, name) ? FITTINGS[name as FittingName] : undefined;
