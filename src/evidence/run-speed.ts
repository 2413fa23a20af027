import type { Blower, Drive, Motor, ReadingsEvidence, Supply } from '../job/types.ts';
import type { Warning } from '../issues/result.ts';
import { runSpeed } from '../motor/index.ts';

/** Speed the wheel will turn at in this job, and how surely; null where nothing tells it. */
export type WheelSpeed = { speed_rpm: number | null; sd: number; warnings: Warning[] };

/** Relative standard deviations of a speed: stated by somebody, taken over from a chart for want of anything better. */
const STATED_SD = 0.004;
const FROM_CHART_SD = 0.03;

/**
 * Stated run speed, else the speed measured with the job's own drive (times the change of drive since), else the motor's
 * plate through the pulleys, else the chart's own speed.
 */
export function wheelSpeed(blower: Blower, supply: Supply, path: string): WheelSpeed {
  if (blower.runSpeed_rpm != null) return { speed_rpm: blower.runSpeed_rpm, sd: STATED_SD, warnings: [] };
  const measured = measuredSpeed(blower, supply);
  if (measured !== null) {
    const { relativeSd, warnings } = runSpeed({
      motor: blower.motor,
      drive: blower.drive,
      supply,
      measuredSpeed_rpm: measured,
      path,
    });
    return { speed_rpm: measured, sd: relativeSd, warnings };
  }
  const plate = runSpeed({ motor: blower.motor, drive: blower.drive, supply, path });
  if (plate.speed_rpm !== null) return { speed_rpm: plate.speed_rpm, sd: plate.relativeSd, warnings: plate.warnings };
  const printed = blower.evidence.find((e) => (e.kind === 'chart' || e.kind === 'rated-point') && e.speed_rpm != null);
  const speed = printed && 'speed_rpm' in printed ? (printed.speed_rpm ?? null) : null;
  const text =
    speed === null
      ? 'Nobody knows how fast the wheel turns: measure it, or read the motor plate and the pulleys.'
      : 'The run speed is not known and is taken from the chart: measure it, or read the motor plate and the pulleys.';
  return {
    speed_rpm: speed,
    sd: speed === null ? 0 : FROM_CHART_SD,
    warnings: [{ code: 'speed-unknown', text, path: `${path}/runSpeed_rpm` }],
  };
}

/** Readings turned by the job's own drive: `sameDrive` is true unless said otherwise. */
export const sameDrive = (e: ReadingsEvidence): boolean => e.rig.sameDrive ?? true;

/** Mean of measured speeds, each brought from the drive it was tested with to today's. */
function measuredSpeed(blower: Blower, supply: Supply): number | null {
  const speeds = blower.evidence.flatMap((e) => {
    if (e.kind !== 'readings' || !sameDrive(e)) return [];
    const change = driveChange(blower, supply, e.testedWith ?? null);
    return e.rows.flatMap((r) => (r.speed_rpm == null ? [] : [r.speed_rpm * change]));
  });
  return speeds.length === 0 ? null : speeds.reduce((sum, n) => sum + n, 0) / speeds.length;
}

/** Pulleys measured twice with a tape, once then and once now; relative standard deviation [-]. Practice value. */
const PULLEY_CHANGE_SD = 0.007;
/** A stated run speed against a speed measured in a test: two instruments. */
const TWO_TACHOMETERS_SD = 0.003;

/**
 * How surely run speed over the speed of a test is known, relative [-]. Speeds that were measured differ among themselves as the
 * motor slips under its load: by as much the speed at an operating point may differ from their mean.
 */
export function speedRatioDoubt(readings: ReadingsEvidence, { blower }: { blower: Blower }): number {
  const told = readings.rows.flatMap((r) => (r.speed_rpm == null ? [] : [r.speed_rpm]));
  const mean = told.reduce((sum, n) => sum + n, 0) / told.length;
  const slipping =
    told.length < 2 ? 0 : Math.sqrt(told.reduce((sum, n) => sum + (n / mean - 1) ** 2, 0) / (told.length - 1));
  const changed = readings.testedWith?.drive != null || readings.testedWith?.motor != null;
  return Math.hypot(
    sameDrive(readings) && blower.motor.kind !== 'universal' ? slipping : 0,
    changed ? PULLEY_CHANGE_SD : 0,
    told.length > 0 && blower.runSpeed_rpm != null ? TWO_TACHOMETERS_SD : 0,
  );
}

/**
 * Speed with today's motor and drive over the speed with those the evidence was taken with [-]; 1 where nothing changed.
 */
export function driveChange(
  blower: Blower,
  supply: Supply,
  testedWith: { drive?: Drive | null; motor?: Motor | null } | null,
): number {
  if (testedWith === null || (testedWith.drive == null && testedWith.motor == null)) return 1;
  const now = runSpeed({ motor: blower.motor, drive: blower.drive, supply }).speed_rpm;
  const then = runSpeed({
    motor: testedWith.motor ?? blower.motor,
    drive: testedWith.drive ?? blower.drive,
    supply,
  }).speed_rpm;
  if (now !== null && then !== null) return now / then;
  const ratio = (d: Drive) =>
    d.kind === 'belt' && d.motorPulleyDiameter_m != null && d.wheelPulleyDiameter_m != null
      ? d.motorPulleyDiameter_m / d.wheelPulleyDiameter_m
      : 1;
  return ratio(blower.drive) / ratio(testedWith.drive ?? blower.drive);
}
