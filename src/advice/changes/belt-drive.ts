import { highestSafeSpeed } from '../../fan/tip-speed.ts';
import { pulleyPairs } from '../../motor/index.ts';
import { formatQuantity } from '../../units/format.ts';
import { at, set, type ChangeMaker } from '../change.ts';
import { SPEED_RANGE, testedWithOldDrive } from './pulley.ts';

/** Speeds that differ less than this are one proposal. */
const STEP = 1.05;

/** A wheel taken off its motor's shaft, on bearings of its own with a belt: then its speed can be chosen. */
export const beltDrive: ChangeMaker = {
  kind: 'belt-drive',
  propose({ job, index, judged, motorOverloaded }) {
    const blower = job.blowers[index]!;
    const speed = judged.candidate.speed_rpm;
    if (blower.drive.kind !== 'direct' || speed === null || (blower.motor.kind ?? 'induction') !== 'induction')
      return [];
    const safe = highestSafeSpeed(blower.wheel) ?? Infinity;
    const pairs = pulleyPairs({
      motorSpeed_rpm: speed,
      wheelSpeed_rpm: motorOverloaded
        ? [SPEED_RANGE.down * speed, speed / STEP]
        : [STEP * speed, Math.min(SPEED_RANGE.up * speed, safe)],
    });
    const away = (p: (typeof pairs)[number]) => Math.abs(Math.log(p.wheelSpeed_rpm / speed));
    const steps = new Map<number, (typeof pairs)[number]>();
    for (const pair of [...pairs].sort((a, b) => away(a) - away(b))) {
      const step = Math.floor(away(pair) / Math.log(STEP));
      if (!steps.has(step)) steps.set(step, pair);
    }
    return [...steps.values()].map((p) => ({
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
