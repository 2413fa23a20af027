import type { SpeedLimit } from '../assessment.ts';
import { highestSafeSpeed } from '../fan/tip-speed.ts';
import type { Blower } from '../job/types.ts';
import { beltSpeed, driveRatio, pulleyPairs, speedRatioMotorStands } from '../motor/index.ts';

/** Pairs further below the highest speed than this are no answer to "how far". */
const NEAR = 0.85;
/** A change of less than this is not worth a pulley. */
const FASTER = 1.01;
const SHOWN = 3;

/**
 * How far the pulley may go before motor or wheel gives up.
 * @param load share of rating the motor carries at its worst now [-], null if not known
 * @param mostLoad share it may carry [-]
 * @returns null where neither limit is known
 * Source: fan laws (power with the cube of speed) for the motor, tip speed for the wheel; sizes of `pulleyPairs`.
 */
export function speedLimit(
  { wheel, drive }: Blower,
  speed_rpm: number,
  load: number | null,
  mostLoad: number,
): SpeedLimit | null {
  const byMotor_rpm =
    load !== null && load > 0 && mostLoad > 0 ? speed_rpm * speedRatioMotorStands(load, mostLoad) : null;
  const byWheel_rpm = highestSafeSpeed(wheel);
  if (byMotor_rpm === null && byWheel_rpm === null) return null;
  const highest_rpm = Math.min(byMotor_rpm ?? Infinity, byWheel_rpm ?? Infinity);
  const { ratio, known } = driveRatio(drive);
  const belt = drive.kind === 'belt' && known;
  const motorSpeed_rpm = speed_rpm / ratio;
  return {
    byMotor_rpm,
    byWheel_rpm,
    highest_rpm,
    bound: highest_rpm === byWheel_rpm ? 'wheel' : 'motor',
    now_rpm: speed_rpm,
    beltSpeed_m_s: belt ? beltSpeed(drive.motorPulleyDiameter_m!, motorSpeed_rpm) : null,
    pairs: belt ? nearest(motorSpeed_rpm, speed_rpm, highest_rpm, drive) : [],
  };
}

/** Pulleys other than those on it now: faster ones where there is room, else slower ones that stay below. */
function nearest(
  motorSpeed_rpm: number,
  now_rpm: number,
  highest_rpm: number,
  have: Blower['drive'],
): SpeedLimit['pairs'] {
  const least = now_rpm < highest_rpm ? Math.max(now_rpm * FASTER, NEAR * highest_rpm) : NEAR * highest_rpm;
  if (least >= highest_rpm) return [];
  const pairs = pulleyPairs({ motorSpeed_rpm, wheelSpeed_rpm: [least, highest_rpm], have });
  const fewest = pairs.filter((p) => p.newPulleys === pairs[0]!.newPulleys);
  return fewest.sort((a, b) => b.wheelSpeed_rpm - a.wheelSpeed_rpm).slice(0, SHOWN);
}
