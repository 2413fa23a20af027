import { pointer } from '../issues/result.ts';
import type { Issue } from '../issues/result.ts';
import { impossibleEvidence } from './impossible-evidence.ts';
import type { Blower, Motor, Supply } from './types.ts';

/** Issues of one blower that its schema cannot see; `path` is the blower's JSON Pointer. */
export function impossibleBlower(blower: Blower, path: string): Issue[] {
  return [
    ...impossibleMotor(blower.motor, path + pointer('motor')),
    ...blower.evidence.flatMap((evidence, index) => impossibleEvidence(evidence, path + pointer('evidence', index))),
  ];
}

/** Idle amps this many times the plate's fit no connection of the same motor. */
const MOST_IDLE = 2;

/** Claims about a motor that cannot both be. */
function impossibleMotor(motor: Motor, path: string): Issue[] {
  const issues: Issue[] = [];
  const add = (field: string, message: string) =>
    issues.push({ code: 'contradiction', path: path + pointer(field), message });
  const { idleCurrent_A: idle, current_A: rated } = motor;
  if (idle != null && rated != null && idle > MOST_IDLE * rated)
    add(
      'idleCurrent_A',
      `With the belt off the motor cannot draw ${idle} A when its plate says ${rated} A at full load.`,
    );
  if (motor.fedThrough != null && (motor.phases === 1 || (motor.kind ?? 'induction') !== 'induction'))
    add('fedThrough', 'Only a three-phase motor is fed through a capacitor or an inverter.');
  if (motor.startsBy != null && motor.phases === 3)
    add('startsBy', 'A three-phase motor needs nothing to get it turning: this is for one-phase motors.');
  return issues;
}

/** Two blowers under one id could not be told apart in the answer. */
export function sameIds(blowers: readonly Blower[]): Issue[] {
  return blowers.flatMap((blower, index) =>
    blowers.findIndex(({ id }) => id === blower.id) < index
      ? [
          {
            code: 'duplicate-id' as const,
            path: pointer('blowers', index, 'id'),
            message: `Two blowers are called "${blower.id}": give each an id of its own.`,
          },
        ]
      : [],
  );
}

/** The mains cannot sink to a voltage above what they are said to be. */
export function impossibleSupply(supply: Supply, path: string): Issue[] {
  const { voltage_V: mains, lowestVoltage_V: lowest } = supply;
  if (mains == null || lowest == null || lowest <= mains) return [];
  const message = `The lowest voltage of the day (${lowest} V) is above the mains voltage (${mains} V): look at both.`;
  return [{ code: 'contradiction', path: path + pointer('lowestVoltage_V'), message }];
}
