import type { Method, Row } from '../../src/readings/schema.ts';
import type { Quantity } from '../../src/units/index.ts';
import type { SuctionSign } from '../forms/suction-sign.ts';

/** What is written down in each row, by method: first what gives the flow, then the pressure at the tap, then what else was seen. */
export type Column = { field: keyof Row; quantity: Quantity; list?: boolean; sign?: SuctionSign };

const TUBE: Column = { field: 'staticPressure_Pa', quantity: 'pressure' };
const HOLE: Column = { field: 'orificeDiameter_m', quantity: 'length' };

const FLOW_COLUMNS: Record<Method, readonly Column[]> = {
  'orifice-cap': [HOLE],
  'conical-inlet': [{ field: 'throatPressure_Pa', quantity: 'pressure' }],
  'bell-mouth': [{ field: 'throatPressure_Pa', quantity: 'pressure' }],
  'orifice-in-pipe': [HOLE, { field: 'differentialPressure_Pa', quantity: 'pressure' }],
  'pitot-traverse': [{ field: 'velocityPressures_Pa', quantity: 'pressure', list: true }],
  'vane-traverse': [{ field: 'velocities_m_s', quantity: 'velocity', list: true }],
  'bag-fill': [{ field: 'fillTime_s', quantity: 'time' }],
};

/** Seen at the motor; each may be left out. */
export const EXTRA_COLUMNS: readonly Column[] = [
  { field: 'speed_rpm', quantity: 'speed' },
  { field: 'current_A', quantity: 'current' },
  { field: 'voltage_V', quantity: 'voltage' },
  { field: 'inputPower_W', quantity: 'power' },
];

/** Shown before anybody asks for more: speed and amps say most. */
const USUAL: readonly (keyof Row)[] = ['speed_rpm', 'current_A'];

/** On the inlet side the tube reads suction, and nobody writes the minus down; where some rows have it, all get it. */
export function columnsFor(method: Method, rows: readonly Row[], all: boolean, suction = true): Column[] {
  const used = (field: keyof Row): boolean => rows.some((row) => row[field] !== null && row[field] !== undefined);
  const extra = EXTRA_COLUMNS.filter(({ field }) => all || USUAL.includes(field) || used(field));
  const sign = rows.some((row) => row.staticPressure_Pa < 0) ? 'minus' : 'none';
  return [...FLOW_COLUMNS[method], suction ? { ...TUBE, sign } : TUBE, ...extra];
}
