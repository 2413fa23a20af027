import type { Warning } from '../issues/result.ts';
import { plateFrequency } from './synchronous.ts';
import type { Drive, MotorPlate, Supply } from './types.ts';

/**
 * Wheel speed over motor speed.
 * @returns ratio [-], 1 for a direct drive; `known` is false for a belt whose pulleys are not both known: then 1 is a mere guess
 * Source: definition, motor pulley ÷ wheel pulley; belt slip (about 1 %) is left out.
 */
export function driveRatio(drive: Drive): { ratio: number; known: boolean } {
  if (drive.kind === 'direct') return { ratio: 1, known: true };
  const { motorPulleyDiameter_m: motor, wheelPulleyDiameter_m: wheel } = drive;
  if (motor == null || wheel == null) return { ratio: 1, known: false };
  return { ratio: motor / wheel, known: true };
}

/** Speed of wheel and motor [1/min] with one relative standard deviation [-]; null where nothing tells it. */
export type RunSpeed = {
  speed_rpm: number | null;
  motorSpeed_rpm: number | null;
  relativeSd: number;
  from: 'measured' | 'plate' | 'unknown';
  warnings: Warning[];
};

/** One standard deviation, relative: a plate speed off its load, pulleys nobody measured, a brushed motor off its load. Practice values. */
const SPEED_DOUBT = { induction: 0.02, brushed: 0.12, pulleysUnknown: 0.3 };

/**
 * Speed the wheel turns at. What was measured is believed; else an induction motor turns at plate speed × mains frequency ÷ plate
 * frequency, times the pulleys, without slip of the belt. A brushed motor's plate speed is taken as it stands; it moves with load.
 * @param measuredSpeed_rpm wheel speed known for this very drive [1/min]
 * @param path JSON Pointer of the blower, for the warnings
 * Source: synchronous speed is proportional to frequency (definition); slip in proportion, about 1 % off between loads.
 */
export function runSpeed(given: {
  motor: MotorPlate;
  drive: Drive;
  supply: Supply;
  measuredSpeed_rpm?: number | null;
  path?: string;
}): RunSpeed {
  const { motor, supply, path = '' } = given;
  const { ratio, known } = driveRatio(given.drive);
  if (given.measuredSpeed_rpm != null) {
    const speed_rpm = given.measuredSpeed_rpm;
    return {
      speed_rpm,
      motorSpeed_rpm: known ? speed_rpm / ratio : null,
      relativeSd: 0.003,
      from: 'measured',
      warnings: [],
    };
  }
  if (motor.speed_rpm == null)
    return { speed_rpm: null, motorSpeed_rpm: null, relativeSd: 0, from: 'unknown', warnings: [] };

  const induction = (motor.kind ?? 'induction') === 'induction';
  const motorSpeed_rpm = motor.speed_rpm * (induction ? frequencyRatio(motor, supply) : 1);
  const warnings: Warning[] = [];
  if (!known) {
    warnings.push({
      code: 'pulleys-unknown',
      text: 'The pulleys are not known: the wheel is taken to turn as fast as the motor. Measure both pulleys, or the speed.',
      path: `${path}/drive`,
    });
  }
  return {
    speed_rpm: motorSpeed_rpm * ratio,
    motorSpeed_rpm,
    relativeSd: known ? (induction ? SPEED_DOUBT.induction : SPEED_DOUBT.brushed) : SPEED_DOUBT.pulleysUnknown,
    from: 'plate',
    warnings,
  };
}

/**
 * Mains frequency over the frequency the plate is made for [-]; 1 where the mains is not known or for brushed motors.
 * Without a frequency on the plate its speed tells it (see `plateFrequency`). Source: definition.
 */
export function frequencyRatio(motor: MotorPlate, supply: Supply): number {
  if ((motor.kind ?? 'induction') !== 'induction' || supply.frequency_Hz == null) return 1;
  return supply.frequency_Hz / (motor.frequency_Hz ?? plateFrequency(motor.speed_rpm, supply.frequency_Hz));
}

/**
 * Share of power a drive passes on, with one standard deviation.
 * Unknown belt 0.95 ± 0.02, a belt somebody stated ± 0.01; direct drive 1.
 * Source: US DOE motor tip sheet on V-belts (95–98 % new, 93 % worn) and a university field note (92 %); the doubt holds both.
 */
export function driveEfficiency(drive: Drive): { value: number; sd: number } {
  if (drive.efficiency != null) return { value: drive.efficiency, sd: drive.kind === 'belt' ? 0.01 : 0 };
  return drive.kind === 'belt' ? { value: 0.95, sd: 0.02 } : { value: 1, sd: 0 };
}
