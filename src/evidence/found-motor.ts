import type { Blower, TestedWith } from '../job/types.ts';
import { motorAtSite, type MotorAtSite } from '../motor/index.ts';
import { driveChange } from './run-speed.ts';
import type { Place } from './gather.ts';

/**
 * Shaft power [W] behind the drive of the motor this wheel was found with, brought to today's speed by the cube law: somebody once chose
 * that motor for this wheel, and a motor or pulley changed since says nothing of the wheel.
 * @param motor the motor of today
 */
export function foundPower_W(blower: Blower, place: Omit<Place, 'air' | 'ductwork'>, motor: MotorAtSite): number {
  const then = foundWith(blower);
  if (then === null) return motor.ratedPower_W * motor.drive.value;
  const found = motorAtSite({
    motor: then.motor,
    drive: then.drive ?? blower.drive,
    cable: blower.cable,
    supply: place.supply,
    altitude_m: place.altitude_m,
    ambient_C: place.ambient_C,
    path: place.path,
  });
  return found.ratedPower_W * found.drive.value * driveChange(blower, place.supply, then) ** 3;
}

/** Motor and drive that the evidence keeps from before a change; null where nothing was changed. */
function foundWith({ evidence }: Blower): (TestedWith & { motor: NonNullable<TestedWith['motor']> }) | null {
  for (const { testedWith } of evidence) if (testedWith?.motor) return { ...testedWith, motor: testedWith.motor };
  return null;
}
