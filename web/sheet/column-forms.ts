import { unitByName, type Quantity } from '../../src/units/index.ts';
import type { ColumnQuantity, HeadQuantity } from './sheet-reading.ts';

/** The unit quantity a column's figures are in; null for what has no unit and no place in the notebook. */
export const COLUMN_FORMS: Record<ColumnQuantity, Quantity | null> = {
  opening: null,
  opening_pct: null,
  orificeDiameter_m: 'length',
  staticPressure_Pa: 'pressure',
  velocityPressure_Pa: 'pressure',
  velocity_m_s: 'velocity',
  flow_m3_s: 'flow',
  current_A: 'current',
  speed_rpm: 'speed',
  inputPower_W: 'power',
};

export const HEAD_FORMS: Record<HeadQuantity, Quantity> = {
  ductDiameter_m: 'length',
  voltage_V: 'voltage',
  airTemperature_C: 'temperature',
  barometer_Pa: 'pressure',
  frequency_Hz: 'frequency',
};

/** The unit table's name of a unit as a sheet spells it; null where it is none of this quantity's. */
export function unitOnSheet(spelled: string | null | undefined, quantity: Quantity | null): string | null {
  if (quantity === null || !spelled) return null;
  return unitByName(spelled, quantity)?.unit ?? null;
}
