import { formatQuantity } from '../../units/format.ts';
import { at, set, type ChangeMaker } from '../change.ts';
import { testedWithOldDrive } from '../tested-with.ts';
import { pairsFor } from './pulley.ts';

/** A wheel taken off its motor's shaft, on bearings of its own with a belt: then its speed can be chosen. */
export const beltDrive: ChangeMaker = {
  kind: 'belt-drive',
  propose(situation) {
    const { job, index, judged } = situation;
    const blower = job.blowers[index]!;
    const speed = judged.candidate.speed_rpm;
    if (blower.drive.kind !== 'direct' || speed === null || (blower.motor.kind ?? 'induction') !== 'induction')
      return [];
    return pairsFor(situation, speed, speed).map((p) => ({
      values: {
        motorPulley_m: p.motorPulleyDiameter_m,
        wheelPulley_m: p.wheelPulleyDiameter_m,
        speed_rpm: p.wheelSpeed_rpm,
      },
      what: `Set the wheel on bearings of its own and drive it by a belt, ${formatQuantity(p.motorPulleyDiameter_m, 'mm')} on the motor and ${formatQuantity(p.wheelPulleyDiameter_m, 'mm')} on the wheel, under a guard: it then turns at ${formatQuantity(p.wheelSpeed_rpm, 'rpm')}`,
      patch: [
        set(at('blowers', index, 'drive'), {
          kind: 'belt',
          motorPulleyDiameter_m: p.motorPulleyDiameter_m,
          wheelPulleyDiameter_m: p.wheelPulleyDiameter_m,
        }),
        ...(blower.runSpeed_rpm == null ? [] : [set(at('blowers', index, 'runSpeed_rpm'), p.wheelSpeed_rpm)]),
        ...testedWithOldDrive(blower, index),
      ],
    }));
  },
};
