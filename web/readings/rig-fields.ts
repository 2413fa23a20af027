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
  | 'lengthTapToBlower_m'
  | 'straightBefore_m'
  | 'straightAfter_m'
  | 'hubDiameter_m'
  | 'anemometerDiameter_m'
  | 'tube/angle_deg'
  | 'tube/liquidDensity_kg_m3';
export type RigField = { name: RigFieldName; quantity: Quantity; unit?: string; placeholder?: string };

const PIPE: RigField = { name: 'pipeDiameter_m', quantity: 'length' };
const THROAT: RigField = { name: 'throatDiameter_m', quantity: 'length' };
const OUTSIDE: RigField = { name: 'pipeOutsideDiameter_m', quantity: 'length' };
const WIDTH: RigField = { name: 'width_m', quantity: 'length' };
const HEIGHT: RigField = { name: 'height_m', quantity: 'length' };
const TO_TAP: RigField = { name: 'lengthToTap_m', quantity: 'length', unit: 'm', placeholder: '8 × D' };
const TO_BLOWER: RigField = { name: 'lengthTapToBlower_m', quantity: 'length', unit: 'm', placeholder: '1.5 m' };
const TUBE: RigField[] = [
  { name: 'tube/angle_deg', quantity: 'angle', placeholder: '90°' },
  { name: 'tube/liquidDensity_kg_m3', quantity: 'density', placeholder: '998 kg/m³' },
];
const LENGTHS = [TO_TAP, TO_BLOWER, ...TUBE];
const BEFORE: RigField = { name: 'straightBefore_m', quantity: 'length', unit: 'm' };
const AFTER: RigField = { name: 'straightAfter_m', quantity: 'length', unit: 'm' };
const HUB: RigField = { name: 'hubDiameter_m', quantity: 'length' };
const HEAD: RigField = { name: 'anemometerDiameter_m', quantity: 'length' };
const IN_PIPE = [BEFORE, AFTER, TO_BLOWER, ...TUBE];

export const RIG_FIELDS: Record<Method, { first: readonly RigField[]; more: readonly RigField[] }> = {
  'orifice-cap': { first: [PIPE], more: [...LENGTHS, OUTSIDE] },
  'conical-inlet': { first: [PIPE, THROAT], more: LENGTHS },
  'bell-mouth': { first: [PIPE, THROAT], more: LENGTHS },
  'orifice-in-pipe': { first: [PIPE], more: IN_PIPE },
  'pitot-traverse': { first: [PIPE], more: [WIDTH, HEIGHT, HUB, ...IN_PIPE] },
  'vane-traverse': { first: [PIPE, HEAD], more: [WIDTH, HEIGHT, HUB, ...IN_PIPE] },
  'bag-fill': { first: [{ name: 'bagVolume_m3', quantity: 'volume' }, PIPE], more: LENGTHS },
};

/** Every method, the commonest first. */
export const METHODS = Object.keys(RIG_FIELDS) as Method[];
