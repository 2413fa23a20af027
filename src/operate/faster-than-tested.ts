import type { Reason } from '../assessment.ts';
import { currentAfterSpeedChange, driveRatio } from '../motor/index.ts';
import type { Candidate } from './candidate.ts';
import { reason } from './reasons.ts';

/** Below this a change of speed needs no word [-]. */
const FASTER = 1.03;

/**
 * What amps read at a lower speed let one expect here: by the cube of speed, as rules of thumb have it, and by the motor's own model.
 * Of the amps read, those nearest to what the model has the motor draw on these ducts at that speed stand for the place on the curve.
 * @param expected_A line amps at the heaviest point at run speed [A]
 * @param drawn      line amps by the share of today's power that the motor carries [A]
 * @returns null where no amps of this motor were read at a lower speed
 * Source: fan laws, see `currentAfterSpeedChange`.
 */
export function fasterThanTested(
  { blower, motor, speed_rpm }: Candidate,
  expected_A: number | null,
  drawn: (share: number) => number | null,
): Reason | null {
  if (expected_A === null || speed_rpm === null) return null;
  const read = blower.evidence.flatMap((e) => {
    if (e.kind !== 'readings' || e.rig.sameDrive === false || e.testedWith?.motor != null) return [];
    const [then, now] = [driveRatio(e.testedWith?.drive ?? blower.drive), driveRatio(blower.drive)];
    const byPulleys = then.known && now.known ? (speed_rpm * then.ratio) / now.ratio : null;
    return e.rows.flatMap((row) => {
      const then_rpm = row.speed_rpm ?? byPulleys;
      if (row.current_A == null || then_rpm === null || speed_rpm < FASTER * then_rpm) return [];
      const likely_A = drawn((then_rpm / speed_rpm) ** 3);
      return likely_A === null
        ? []
        : [{ measured_A: row.current_A, then_rpm, off: Math.abs(Math.log(row.current_A / likely_A)) }];
    });
  });
  if (read.length === 0) return null;
  const { measured_A, then_rpm } = read.reduce((a, b) => (b.off < a.off ? b : a));
  return reason('faster-than-tested', 'motor', {
    measured_A,
    then_rpm,
    now_rpm: speed_rpm,
    cubed_A: currentAfterSpeedChange(measured_A, speed_rpm / then_rpm),
    current_A: expected_A,
    plate_A: motor.plate.current_A * motor.connection.currentFactor,
  });
}
