/**
 * The physical quantities people type. `base` is the unit the program computes in (the suffix of its field names);
 * `plausible` is the span [base unit] in which a blower, a duct or a motor of a workshop can lie. It never refuses a value:
 * it only settles which of two readings of a comma or a point was meant. Source: definition.
 */
export const QUANTITIES = {
  length: { label: 'a length', base: 'm', plausible: [0.0004, 5000] },
  area: { label: 'an area', base: 'm²', plausible: [1e-6, 1000] },
  volume: { label: 'a volume', base: 'm³', plausible: [1e-4, 2000] },
  flow: { label: 'a flow of air', base: 'm³/s', plausible: [0.002, 60] },
  pressure: { label: 'a pressure', base: 'Pa', plausible: [2, 120_000] },
  power: { label: 'a power', base: 'W', plausible: [10, 200_000] },
  velocity: { label: 'a speed of air', base: 'm/s', plausible: [0.2, 150] },
  speed: { label: 'a speed of turning', base: 'rpm', plausible: [60, 60_000] },
  temperature: { label: 'a temperature', base: '°C', plausible: [-60, 200] },
  voltage: { label: 'a voltage', base: 'V', plausible: [6, 1000] },
  current: { label: 'a current', base: 'A', plausible: [0.05, 500] },
  frequency: { label: 'a frequency', base: 'Hz', plausible: [10, 400] },
  density: { label: 'a density', base: 'kg/m³', plausible: [0.3, 3] },
  time: { label: 'a time', base: 's', plausible: [0.5, 1e8] },
  mass: { label: 'a mass', base: 'kg', plausible: [0.01, 5000] },
  'mass-flow': { label: 'a mass a time', base: 'kg/h', plausible: [0.02, 5000] },
  angle: { label: 'an angle', base: '°', plausible: [0.5, 360] },
  fraction: { label: 'a share', base: '1', plausible: [0.001, 2] },
  capacity: { label: 'a capacity', base: 'µF', plausible: [0.1, 2000] },
} as const satisfies Record<string, { label: string; base: string; plausible: readonly [number, number] }>;

export type Quantity = keyof typeof QUANTITIES;
