import type { Quantity } from '../units/quantities.ts';

/** What a column of a sheet may hold. */
export const COLUMN_QUANTITIES = {
  opening: { of: null },
  opening_pct: { of: 'fraction' },
  orificeDiameter_m: { of: 'length' },
  staticPressure_Pa: { of: 'pressure' },
  velocityPressure_Pa: { of: 'pressure' },
  velocity_m_s: { of: 'velocity' },
  flow_m3_s: { of: 'flow' },
  current_A: { of: 'current' },
  speed_rpm: { of: 'speed' },
  inputPower_W: { of: 'power' },
} as const satisfies Record<string, { of: Quantity | null }>;

export type ColumnQuantity = keyof typeof COLUMN_QUANTITIES;

/** What the head of a sheet may say. */
export const HEAD_QUANTITIES = {
  voltage_V: { of: 'voltage', unit: 'V', range: [40, 1000] },
  frequency_Hz: { of: 'frequency', unit: 'Hz', range: [10, 400] },
  ductDiameter_m: { of: 'length', unit: 'mm', range: [0.03, 3] },
  airTemperature_C: { of: 'temperature', unit: '°C', range: [-30, 90] },
  barometer_Pa: { of: 'pressure', unit: 'hPa', range: [50_000, 110_000] },
} as const satisfies Record<string, { of: Quantity; unit: string; range: readonly [number, number] }>;

export type HeadQuantity = keyof typeof HEAD_QUANTITIES;
