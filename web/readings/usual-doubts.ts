import type { ReadingsEvidence } from '../../src/job/types.ts';
import { DOUBTS, flowDoubt, readingDoubt } from '../../src/readings/index.ts';
import type { Rig } from '../../src/readings/schema.ts';
import type { Quantity } from '../../src/units/index.ts';

export type Instrument = keyof NonNullable<Rig['uncertainty']>;

export const INSTRUMENTS: readonly { field: Instrument; quantity: Quantity }[] = [
  { field: 'pressure_Pa', quantity: 'pressure' },
  { field: 'speed_rpm', quantity: 'speed' },
  { field: 'current_A', quantity: 'current' },
  { field: 'flowRelative', quantity: 'fraction' },
];

/** Readings to state a share of, where nothing is measured yet [Pa, rpm, A]. */
const TYPICAL = { pressure_Pa: 1000, speed_rpm: 2900, current_A: 5 };

/** What the program takes each instrument's standard uncertainty to be where the job says nothing, at the middle of its readings. */
export function usualDoubts(evidence: ReadingsEvidence): Record<Instrument, number> {
  const untold = { ...evidence, rig: { ...evidence.rig, uncertainty: null } };
  const { rows } = evidence;
  const pressure = middle(rows.map((row) => Math.abs(row.staticPressure_Pa))) ?? TYPICAL.pressure_Pa;
  const speed = middle(rows.map((row) => row.speed_rpm)) ?? TYPICAL.speed_rpm;
  const current = middle(rows.map((row) => row.current_A)) ?? TYPICAL.current_A;
  return {
    pressure_Pa: readingDoubt(untold)(pressure),
    speed_rpm: DOUBTS.speed.sd * speed,
    current_A: DOUBTS.clampReading.sd * current,
    flowRelative: flowDoubt(untold.rig),
  };
}

function middle(values: readonly (number | null | undefined)[]): number | null {
  const told = values.flatMap((value) => (value == null || value === 0 ? [] : [value])).sort((a, b) => a - b);
  return told[Math.floor(told.length / 2)] ?? null;
}
