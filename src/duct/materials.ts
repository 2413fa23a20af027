/** What the air carries: the lowest speed [m/s] that keeps it moving, and where the figure comes from. */
export type MaterialRecord = { label: string; minimumVelocity_m_s: number; source: string };

/**
 * Lowest transport speeds in horizontal duct. Rows and sources: fixtures/reference/conveying.json, `transport_velocity`.
 * Risers and damp chips want more: figures are for dry goods, and a section or a machine may ask for its own.
 */
export const MATERIALS = {
  'wood-shavings': {
    label: 'wood shavings and chips',
    minimumVelocity_m_s: 20,
    source:
      'ACGIH Industrial Ventilation 2009: heavy dusts (wood blocks, wet sawdust) 20–23 m/s, light shavings 15–20 m/s; damp chips 25–28 m/s',
  },
  'wood-dust': {
    label: 'wood dust',
    minimumVelocity_m_s: 20,
    source:
      'HSE and German guidance: 20 m/s for wood dust; ACGIH 2009 18–20 m/s for average dust, fine flour alone 12–15 m/s',
  },
  'metal-grinding': {
    label: 'metal grinding dust',
    minimumVelocity_m_s: 20,
    source:
      'ACGIH Industrial Ventilation 2009: grinding dust 18–20 m/s; 29 CFR 1910.94: branch 22.9 m/s, main 17.8 m/s',
  },
  'textile-lint': {
    label: 'textile lint',
    minimumVelocity_m_s: 15,
    source: 'ACGIH Industrial Ventilation 2009: cotton lint 12–15 m/s; HSA Ireland 2014: lint 12.5 m/s',
  },
  'light-powder': {
    label: 'light powder',
    minimumVelocity_m_s: 15,
    source: 'ACGIH Industrial Ventilation 2009: dry dusts and powders 15–20 m/s; HSA Ireland 2014: 15 m/s',
  },
} as const satisfies Record<string, MaterialRecord>;

/** A name in the table of materials. */
export type Material = keyof typeof MATERIALS;
/** All names in the table of materials, in its order. */
export const MATERIAL_NAMES = Object.keys(MATERIALS) as [Material, ...Material[]];
