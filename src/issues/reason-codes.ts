/** Why a case or a blower is judged as it is. Each code has its sentence in `operate/reasons.ts` or `motor/cautions.ts`. */
export const REASON_CODES = [
  'flow-short',
  'velocity-low',
  'motor-overload',
  'motor-overload-open',
  'low-voltage',
  'single-phase-feed',
  'voltage-mismatch',
  'self-cooled-motor',
  'dc-supply',
  'hot-or-high',
  'unstable',
  'several-points',
  'tip-speed',
  'outside-evidence',
  'power-unknown',
  'outlet-area-unknown',
  'no-operating-point',
  'filter-area-small',
  'returned-air',
  'drum-may-collapse',
  'sparks-with-dust',
  'dust-through-wheel',
  'compressible',
  'enough',
] as const;

export type ReasonCode = (typeof REASON_CODES)[number];
