/** What the air carries: the lowest speed [m/s] that keeps it moving, and where the figure comes from. */
export const MATERIALS = {
  'wood-shavings': { label: 'wood shavings and chips', minimumVelocity_m_s: 20, source: 'to be filled' },
  'wood-dust': { label: 'wood dust', minimumVelocity_m_s: 20, source: 'to be filled' },
  'metal-grinding': { label: 'metal grinding dust', minimumVelocity_m_s: 20, source: 'to be filled' },
  'textile-lint': { label: 'textile lint', minimumVelocity_m_s: 15, source: 'to be filled' },
  'light-powder': { label: 'light powder', minimumVelocity_m_s: 15, source: 'to be filled' },
} as const satisfies Record<string, { label: string; minimumVelocity_m_s: number; source: string }>;

export type Material = keyof typeof MATERIALS;
export const MATERIAL_NAMES = Object.keys(MATERIALS) as [Material, ...Material[]];
