export const FAMILY_NAMES = [
  'radial',
  'radial-tip',
  'backward-inclined',
  'backward-curved',
  'forward-curved',
  'axial',
  'through-flow-vacuum',
  'unknown',
] as const;

export type Family = (typeof FAMILY_NAMES)[number];
