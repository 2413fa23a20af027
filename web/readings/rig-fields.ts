import type { Method } from '../../src/readings/schema.ts';
import type { Quantity } from '../../src/units/index.ts';

/** Sizes a rig is asked for: `first` stands open, `more` has sensible values of its own and is folded away. */
export type RigFieldName =
  | 'pipeDiameter_m'
  | 'pipeOutsideDiameter_m'
  | 'throatDiameter_m'
  | 'width_m'
  | 'height_m'
  | 'bagVolume_m3'
  | 'lengthToTap_m'
  | 'lengthTapToBlower_m';
export type RigField = { name: RigFieldName; quantity: Quantity; unit?: string; placeholder?: string };

const PIPE: RigField = { name: 'pipeDiameter_m', quantity: 'length' };
const THROAT: RigField = { name: 'throatDiameter_m', quantity: 'length' };
const OUTSIDE: RigField = { name: 'pipeOutsideDiameter_m', quantity: 'length' };
const WIDTH: RigField = { name: 'width_m', quantity: 'length' };
const HEIGHT: RigField = { name: 'height_m', quantity: 'length' };
const TO_TAP: RigField = { name: 'lengthToTap_m', quantity: 'length', unit: 'm', placeholder: '8 × D' };
const TO_BLOWER: RigField = { name: 'lengthTapToBlower_m', quantity: 'length', unit: 'm', placeholder: '1.5 m' };
const LENGTHS = [TO_TAP, TO_BLOWER];

export const RIG_FIELDS: Record<Method, { first: readonly RigField[]; more: readonly RigField[] }> = {
  'orifice-cap': { first: [PIPE], more: [...LENGTHS, OUTSIDE] },
  'conical-inlet': { first: [PIPE, THROAT], more: LENGTHS },
  'bell-mouth': { first: [PIPE, THROAT], more: LENGTHS },
  'orifice-in-pipe': { first: [PIPE], more: LENGTHS },
  'pitot-traverse': { first: [PIPE], more: [WIDTH, HEIGHT, ...LENGTHS] },
  'vane-traverse': { first: [PIPE], more: [WIDTH, HEIGHT, ...LENGTHS] },
  'bag-fill': { first: [{ name: 'bagVolume_m3', quantity: 'volume' }, PIPE], more: LENGTHS },
};

/** Every method, the commonest first. */
export const METHODS = Object.keys(RIG_FIELDS) as Method[];
