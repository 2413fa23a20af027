import type { Air } from '../air/air.ts';
import {
  DRIVE_EFFICIENCY_ERROR,
  MOTOR_EFFICIENCY_ERROR,
  type PowerObservation,
  type PressureObservation,
} from '../fan/observation.ts';
import type { Warning } from '../issues/result.ts';
import type { Blower, ReadingsEvidence, Supply } from '../job/types.ts';
import { motorAtSite, type MotorAtSite } from '../motor/index.ts';
import { reduceReadings, type Effect, type ReadingPoint } from '../readings/index.ts';
import { motorObservations, type RowState, type TestedMotor } from './motor-readings.ts';
import { driveChange, sameDrive, speedRatioDoubt } from './run-speed.ts';
import { factorsTo, type RunState, type StateFactors } from './run-state.ts';
import { uncertainMotor } from './uncertain-motor.ts';

/** What a set of readings needs to know of the blower it was taken on. */
export type ReadingsSituation = {
  blower: Blower;
  supply: Supply;
  run: RunState;
  siteAir: Air;
  /** the blower's motor today, at this site */
  motor: MotorAtSite;
  altitude_m: number | null;
  ambient_C: number | null;
  path: string;
};

/** Home-made readings as observations of the curve at run speed and in site air; amps or watts as observations of its power. */
export function readingObservations(
  readings: ReadingsEvidence,
  situation: ReadingsSituation,
): { pressures: PressureObservation[]; powers: PowerObservation[]; warnings: Warning[] } {
  const { path } = situation;
  const reduced = reduceReadings(readings, situation.siteAir, path);
  if (!reduced.ok) {
    // the door refuses such readings; a caller that passes it by still gets an answer without them
    return {
      pressures: [],
      powers: [],
      warnings: reduced.issues.map((i) => ({ code: i.code, text: i.message, path: i.path })),
    };
  }
  const warnings = [...reduced.warnings];
  const speedOf = rowSpeeds(readings, situation, reduced.value.points, warnings);
  const tested = testedMotor(readings, situation);
  const speedRatio = { error: `${path}/run-speed-over-test`, sd: speedRatioDoubt(readings, situation) };
  const pressures: PressureObservation[] = [];
  const powers: PowerObservation[] = [];
  for (const point of reduced.value.points) {
    const factors = factorsTo(situation.run, speedOf(point), point.airDensity_kg_m3);
    pressures.push(pressureObservation(point, factors, speedRatio));
    if (tested) powers.push(...motorObservations(point, { factors, speedRatio, path }, tested));
  }
  return { pressures, powers, warnings };
}

function pressureObservation(
  point: ReadingPoint,
  factors: StateFactors,
  ratio: RowState['speedRatio'],
): PressureObservation {
  const brought = ({ flow_m3_s, pressure_Pa }: Omit<Effect, 'error'>) => ({
    flow_m3_s: flow_m3_s * factors.flow,
    value: pressure_Pa * factors.pressure,
  });
  const flow_m3_s = point.flow_m3_s * factors.flow;
  const pressure_Pa = point.pressure_Pa * factors.pressure;
  return {
    kind: point.pressureKind,
    flow_m3_s,
    pressure_Pa,
    shared: [
      ...point.shared.map((e) => ({ ...brought(e), error: e.error })),
      { error: ratio.error, flow_m3_s: ratio.sd * flow_m3_s, value: 2 * ratio.sd * pressure_Pa },
    ],
    own: point.own.map(brought),
    perPascal: brought(point.perPascal),
    path: point.path,
  };
}

/**
 * Speed of each row [1/min]: measured, else the mean of the others, else that of the drive it was tested with. Null means "as the
 * wheel will run": a universal motor finds its own speed at every load, so its rows stand as measured.
 */
function rowSpeeds(
  readings: ReadingsEvidence,
  { blower, supply, run, path }: ReadingsSituation,
  points: readonly ReadingPoint[],
  warnings: Warning[],
): (point: ReadingPoint) => number | null {
  const own = sameDrive(readings);
  if (own && blower.motor.kind === 'universal') return () => null;
  const told = points.flatMap((p) => (p.speed_rpm === null ? [] : [p.speed_rpm]));
  const mean = told.length === 0 ? null : told.reduce((s, n) => s + n, 0) / told.length;
  if (mean !== null) return (p) => p.speed_rpm ?? mean;
  if (own) {
    const change = driveChange(blower, supply, readings.testedWith ?? null);
    const then = run.speed_rpm === null ? null : run.speed_rpm / change;
    return () => then;
  }
  const text =
    'Another motor turned the wheel in this test and nobody wrote down how fast: the readings are taken as if at run speed. Measure the speed.';
  warnings.push({ code: 'speed-assumed', text, path: `${path}/rows` });
  return () => null;
}

/** What the errors of the blower's own motor are called after. */
const OWN_MOTOR = MOTOR_EFFICIENCY_ERROR.split('/')[0]!;

/** The motor and drive that turned the wheel in the test; null where another one did that nobody described. */
function testedMotor(readings: ReadingsEvidence, situation: ReadingsSituation): TestedMotor | null {
  const { blower, supply, motor, path } = situation;
  const { testedWith } = readings;
  if (!sameDrive(readings) && testedWith?.motor == null) return null;
  const drive = testedWith?.drive ?? blower.drive;
  const driveError = testedWith?.drive == null ? DRIVE_EFFICIENCY_ERROR : `${path}/drive-efficiency`;
  const at =
    testedWith?.motor == null && testedWith?.drive == null
      ? motor
      : motorAtSite({
          motor: testedWith.motor ?? blower.motor,
          drive,
          cable: testedWith.motor == null ? blower.cable : null,
          supply,
          altitude_m: situation.altitude_m,
          ambient_C: situation.ambient_C,
          path,
        });
  const name = testedWith?.motor == null ? OWN_MOTOR : `${path}/motor`;
  return {
    motor: uncertainMotor(at, name),
    drive: { ...at.drive, error: driveError, direct: drive.kind === 'direct' },
  };
}
