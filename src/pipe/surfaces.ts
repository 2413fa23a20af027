/** Inner surfaces of pipes: roughness [m], its relative doubt (one standard deviation) and where it comes from. */
export const SURFACES = {
  'galvanised-duct': { label: 'galvanised sheet duct', roughness_m: 0.00015, doubt: 0.3, source: 'to be filled' },
  'spiral-duct': { label: 'spiral duct', roughness_m: 0.00009, doubt: 0.3, source: 'to be filled' },
  'pvc-pipe': { label: 'PVC pressure pipe', roughness_m: 0.00003, doubt: 0.3, source: 'to be filled' },
  'drain-pipe': { label: 'plastic drain pipe', roughness_m: 0.00005, doubt: 0.3, source: 'to be filled' },
  'flexible-hose': { label: 'ribbed flexible hose', roughness_m: 0.003, doubt: 0.3, source: 'to be filled' },
  'smooth-bore-hose': { label: 'smooth-bore hose', roughness_m: 0.0003, doubt: 0.3, source: 'to be filled' },
  'aluminium-flex': { label: 'aluminium flex', roughness_m: 0.002, doubt: 0.3, source: 'to be filled' },
  plywood: { label: 'plywood channel', roughness_m: 0.0005, doubt: 0.3, source: 'to be filled' },
  cement: { label: 'cement pipe', roughness_m: 0.001, doubt: 0.3, source: 'to be filled' },
  'rusted-steel': { label: 'rusted steel', roughness_m: 0.0009, doubt: 0.3, source: 'to be filled' },
} as const satisfies Record<string, { label: string; roughness_m: number; doubt: number; source: string }>;

export type Surface = keyof typeof SURFACES;
export const SURFACE_NAMES = Object.keys(SURFACES) as [Surface, ...Surface[]];
