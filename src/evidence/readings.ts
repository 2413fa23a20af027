import type { Air } from '../air/air.ts';
import {
  DRIVE_EFFICIENCY_ERROR,
  type PowerObservation,
  type PressureObservation,
  type SharedErrorEffect,
} from '../fan/observation.ts';
import type { Warning } from '../issues/result.ts';
import type { Blower, ReadingsEvidence, Supply } from '../job/types.ts';
import {
  motorAtSite,
  shaftPowerFromAmps,
  shaftPowerFromWatts,
  type MotorAtSite,
  type ShaftPowerReading,
} from '../motor/index.ts';
import { reduceReadings, type Effect, type ReadingPoint } from '../readings/index.ts';
import { driveChange, sameDrive } from './run-speed.ts';
import { factorsTo, type RunState, type StateFactors } from './run-state.ts';

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

/** Below this share of its rating a motor's amps or watts tell nothing of the load. */
const LEAST_LOAD = 0.03;

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
  const pressures: PressureObservation[] = [];
  const powers: PowerObservation[] = [];
  for (const point of reduced.value.points) {
    const factors = factorsTo(situation.run, speedOf(point), point.airDensity_kg_m3);
    pressures.push(pressureObservation(point, factors));
    const power = powerObservation(point, factors, tested, path);
    if (power) powers.push(power);
  }
  return { pressures, powers, warnings };
}

function pressureObservation(point: ReadingPoint, factors: StateFactors): PressureObservation {
  const brought = ({ flow_m3_s, pressure_Pa }: Effect) => ({
    flow_m3_s: flow_m3_s * factors.flow,
    value: pressure_Pa * factors.pressure,
  });
  return {
    kind: point.pressureKind,
    flow_m3_s: point.flow_m3_s * factors.flow,
    pressure_Pa: point.pressure_Pa * factors.pressure,
    shared: point.shared.map((e) => ({ ...brought(e), error: e.error })),
    own: point.own.map(brought),
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

type TestedMotor = { at: MotorAtSite; drive: { value: number; sd: number; error: string } };

/** The motor and drive that turned the wheel in the test; null where another one did that nobody described. */
function testedMotor(readings: ReadingsEvidence, situation: ReadingsSituation): TestedMotor | null {
  const { blower, supply, motor, path } = situation;
  const { testedWith } = readings;
  if (!sameDrive(readings) && testedWith?.motor == null) return null;
  if (testedWith?.motor == null && testedWith?.drive == null)
    return { at: motor, drive: { ...motor.drive, error: DRIVE_EFFICIENCY_ERROR } };
  const at = motorAtSite({
    motor: testedWith.motor ?? blower.motor,
    drive: testedWith.drive ?? blower.drive,
    supply,
    altitude_m: situation.altitude_m,
    ambient_C: situation.ambient_C,
    path,
  });
  return {
    at,
    drive: { ...at.drive, error: testedWith.drive == null ? DRIVE_EFFICIENCY_ERROR : `${path}/drive-efficiency` },
  };
}

/** Watts before amps: watts tell the load, amps mostly the iron. */
function powerObservation(
  point: ReadingPoint,
  factors: StateFactors,
  tested: TestedMotor | null,
  path: string,
): PowerObservation | null {
  if (tested === null) return null;
  const { at, drive } = tested;
  const reading = shaftPowerRead(point, at);
  if (reading === null || reading.shaftPower_W < LEAST_LOAD * at.ratedPower_W) return null;
  const share = (sd_W: number) => Math.min(1, sd_W / reading.shaftPower_W);
  const error = (name: string, value: number): SharedErrorEffect => ({ error: name, flow_m3_s: 0, value });
  return {
    flow_m3_s: point.flow_m3_s * factors.flow,
    shaftPower_W: reading.shaftPower_W * drive.value * factors.power,
    shared: [
      error(`${path}/motor`, share(reading.sharedSd_W)),
      ...(drive.sd > 0 ? [error(drive.error, drive.sd / drive.value)] : []),
    ],
    own: [{ flow_m3_s: 0, value: share(reading.ownSd_W) }],
    path: point.path,
  };
}

function shaftPowerRead({ electrical }: ReadingPoint, at: MotorAtSite): ShaftPowerReading | null {
  const { inputPower_W: watts, current_A: amps } = electrical;
  const voltage_V = electrical.voltage_V?.value ?? null;
  if (watts) return shaftPowerFromWatts({ at, voltage_V, inputPower_W: watts.value, relativeSd: watts.ownRelativeSd });
  if (amps) return shaftPowerFromAmps({ at, voltage_V, current_A: amps.value, relativeSd: amps.ownRelativeSd });
  return null;
}
