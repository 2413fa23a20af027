/** The units worth choosing for reading; the fields understand many more. */
export const CHOOSABLE = {
  flow: ['m³/h', 'm³/min', 'm³/s', 'L/s', 'CFM'],
  pressure: ['mm water', 'Pa', 'kPa', 'mbar', 'in water'],
  length: ['mm', 'cm', 'm', 'in', 'ft'],
  power: ['kW', 'W', 'HP', 'PS'],
  velocity: ['m/s', 'ft/min', 'ft/s', 'km/h'],
  temperature: ['°C', '°F'],
} as const satisfies Record<string, readonly string[]> as Record<
  'flow' | 'pressure' | 'length' | 'power' | 'velocity' | 'temperature',
  readonly string[]
>;
