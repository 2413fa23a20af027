import type { Rig, Row } from './schema.ts';
import { DOUBTS } from './uncertainty.ts';

/** One electrical reading: its value, the relative error of this row alone, and the relative error all rows share, by name. */
export type ElectricalReading = { value: number; ownRelativeSd: number; shared: { error: string; relativeSd: number } };

export type Electrical = {
  current_A: ElectricalReading | null;
  voltage_V: ElectricalReading | null;
  inputPower_W: ElectricalReading | null;
};

/**
 * Amps, volts and watts of a row with the doubt of their meters [-, relative standard deviations].
 * A standard uncertainty of the current given with the rig is that of one reading. `prefix` keeps the meters of rigs apart.
 */
export function electricalOf(row: Row, rig: Rig, prefix: string): Electrical {
  const reading = (
    value: number | null | undefined,
    meter: string,
    own: number,
    scale: number,
  ): ElectricalReading | null =>
    value == null ? null : { value, ownRelativeSd: own, shared: { error: `${prefix}/${meter}`, relativeSd: scale } };
  const told = rig.uncertainty?.current_A;
  const amps = told != null && row.current_A != null ? told / row.current_A : DOUBTS.clampReading.sd;
  return {
    current_A: reading(row.current_A, 'clamp-meter', amps, DOUBTS.clampScale.sd),
    voltage_V: reading(row.voltage_V, 'volt-meter', DOUBTS.voltReading.sd, DOUBTS.voltScale.sd),
    inputPower_W: reading(row.inputPower_W, 'watt-meter', DOUBTS.wattReading.sd, DOUBTS.wattScale.sd),
  };
}
