import type { ReadingConditions, ShaftPowerReading } from './shaft-power.ts';
import { boardVoltage, howRough } from './shaft-power.ts';
import { terminalVoltage } from './terminals.ts';

/** Doubts of slip: of the printed slip (plate speeds are rounded; IEC 60034-1 allows 20–30 %), of speed and mains frequency, relative. */
const SLIP_DOUBT = { plateSlip: 0.22, speed: 0.003, frequency: 0.003 };

/**
 * Shaft power from slip: load = (n_s − n)/(n_s − n_r)·(V/V_r)². Rough: 20 % and more is normal, worse for small slips, and not for rewound motors.
 * @param motorSpeed_rpm speed of the motor, not of the wheel behind pulleys [1/min]
 * @returns null for brushed and rewound motors, or where the plate gives no speed or prints the synchronous one
 * Source: US DOE fact sheet on motor load, voltage-compensated slip.
 */
export function shaftPowerFromSlip(
  reading: ReadingConditions & { motorSpeed_rpm: number; speedRelativeSd?: number | null },
): ShaftPowerReading | null {
  const { plate, current } = reading.at;
  if (plate.rewound) return null;
  if (plate.synchronousSpeed_rpm === null || plate.speed_rpm === null || plate.speed_rpm >= plate.synchronousSpeed_rpm)
    return null;
  // At another frequency the slip in turns per minute stays, the synchronous speed moves.
  const synchronous = plate.synchronousSpeed_rpm * (current.ratedPower_W / plate.ratedPower_W);
  const ratedSpeed = synchronous - (plate.synchronousSpeed_rpm - plate.speed_rpm);
  const { at } = reading;
  const loadAt = (volts: number) =>
    slipLoad({ synchronous, ratedSpeed, speed: reading.motorSpeed_rpm, voltageRatio: volts / current.voltage_V });
  const board_V = boardVoltage(reading);
  const volts = terminalVoltage(at, board_V, Math.max(loadAt(board_V), 0) * current.ratedPower_W);
  const voltageRatio = volts / current.voltage_V;
  const load = loadAt(volts);
  const perRpm = (current.ratedPower_W * voltageRatio ** 2) / (synchronous - ratedSpeed);
  const shaftPower_W = Math.max(load * current.ratedPower_W, 0);
  const sharedSd_W = Math.hypot(SLIP_DOUBT.plateSlip * shaftPower_W, perRpm * SLIP_DOUBT.frequency * synchronous);
  const ownSd_W = perRpm * (reading.speedRelativeSd ?? SLIP_DOUBT.speed) * reading.motorSpeed_rpm;
  return { shaftPower_W, sharedSd_W, ownSd_W, text: howRough('slip', shaftPower_W, Math.hypot(sharedSd_W, ownSd_W)) };
}

/**
 * Load [-] = (n_s − n)/(n_s − n_r)·(V/V_r)², speeds in 1/min. Source: US DOE fact sheet on motor load.
 * Throws RangeError where the rated speed is not below the synchronous one.
 */
export function slipLoad(given: {
  synchronous: number;
  ratedSpeed: number;
  speed: number;
  voltageRatio?: number;
}): number {
  const ratedSlip = given.synchronous - given.ratedSpeed;
  if (!(ratedSlip > 0))
    throw new RangeError(`ratedSpeed: expected below ${given.synchronous}, received ${given.ratedSpeed}`);
  return ((given.synchronous - given.speed) / ratedSlip) * (given.voltageRatio ?? 1) ** 2;
}
