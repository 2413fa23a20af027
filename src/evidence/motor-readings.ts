import type { PowerObservation, SharedErrorEffect } from '../fan/observation.ts';
import {
  boardVoltage,
  drawnBy,
  shaftPowerFromAmps,
  shaftPowerFromSlip,
  shaftPowerFromWatts,
  terminalVoltage,
} from '../motor/index.ts';
import type { ReadingPoint } from '../readings/index.ts';
import type { StateFactors } from './run-state.ts';
import type { UncertainMotor } from './uncertain-motor.ts';

/** The motor and drive that turned the wheel in a test. */
export type TestedMotor = {
  motor: UncertainMotor;
  /** share of power the drive passes on, with the name of its error; `direct`: wheel and motor turn as one */
  drive: { value: number; sd: number; error: string; direct: boolean };
};

/** How one row of readings stands against the run state. */
export type RowState = {
  factors: StateFactors;
  /** name and relative size of the error that run speed over the speed of the test has */
  speedRatio: { error: string; sd: number };
  path: string;
};

/** Mains voltage at the moment of a reading, where nobody read it; relative standard deviation [-]. Practice value. */
const VOLTAGE_NOT_READ = 0.02;
/** Doubts of slip, relative: plate slip (rounded speeds; IEC 60034-1 allows 20–30 %), mains frequency. Source: feasibility figures. */
const PLATE_SLIP = 0.22;
const FREQUENCY = 0.003;
/** A speed nobody gave a doubt for. Source: tachometer or sound, 0.15–0.5 %. */
const SPEED = 0.003;

/** What watts, amps and slip of one row tell of the wheel's shaft power: everything there is, each with its own doubt. */
export function motorObservations(point: ReadingPoint, row: RowState, tested: TestedMotor): PowerObservation[] {
  const { current_A: amps, inputPower_W: watts, voltage_V: volts } = point.electrical;
  const { at } = tested.motor;
  const voltage_V = volts?.value ?? null;
  const found: PowerObservation[] = [];
  if (watts) {
    const rough = shaftPowerFromWatts({ at, voltage_V, inputPower_W: watts.value });
    found.push(
      observation(point, row, tested, {
        lnReading: Math.log(watts.value),
        lnDrawn: (drawn) => Math.log(drawn.input_W),
        meter: { error: watts.shared.error, flow_m3_s: 0, value: watts.shared.relativeSd },
        ownSd: watts.ownRelativeSd,
        motorPower_W: rough.shaftPower_W,
      }),
    );
  }
  const rough = amps && shaftPowerFromAmps({ at, voltage_V, current_A: amps.value });
  if (amps && rough)
    found.push(
      observation(point, row, tested, {
        lnReading: Math.log(amps.value / at.connection.currentFactor),
        lnDrawn: (drawn) => Math.log(drawn.current_A),
        meter: { error: amps.shared.error, flow_m3_s: 0, value: amps.shared.relativeSd },
        ownSd: amps.ownRelativeSd,
        motorPower_W: rough.shaftPower_W,
      }),
    );
  const slip = slipObservation(point, row, tested);
  return slip ? [...found, slip] : found;
}

type Meter = {
  lnReading: number;
  lnDrawn(drawn: { input_W: number; current_A: number }): number;
  meter: SharedErrorEffect;
  ownSd: number;
  motorPower_W: number;
};

const LEAST_POWER_W = 1e-3;
/** Beyond this multiple of its rating the model of a motor means nothing; it only has to stay a number. */
const MOST_LOAD = 20;

/** Unknowns of every reading: the motor's own, then drive, voltage, and run speed over the speed of the test. */
function observation(point: ReadingPoint, row: RowState, tested: TestedMotor, given: Meter): PowerObservation {
  const { motor, drive } = tested;
  const { at } = motor;
  const volts = point.electrical.voltage_V;
  const voltage = {
    // the cable's drop at the load the reading shows; doubt in that load moves it by less than a volt meter is off
    value: terminalVoltage(at, boardVoltage({ at, voltage_V: volts?.value ?? null }), given.motorPower_W),
    error: volts ? volts.shared.error : `${row.path}/voltage`,
    sd: volts ? volts.shared.relativeSd : VOLTAGE_NOT_READ,
  };
  const first = motor.unknowns.length;
  const flow = flowErrors(point, row);
  const lnForeseen = (wheel_W: number, z: ArrayLike<number>) => {
    const wheelThen_W = (wheel_W / row.factors.power) * Math.exp(-3 * row.speedRatio.sd * z[first + 2]!);
    const efficiency = Math.min(drive.value + drive.sd * z[first]!, 1);
    const motor_W = Math.min(Math.max(wheelThen_W / efficiency, LEAST_POWER_W), MOST_LOAD * at.ratedPower_W);
    return given.lnDrawn(drawnBy(motor.current(z), motor_W, voltage.value * Math.exp(voltage.sd * z[first + 1]!)));
  };
  return {
    flow_m3_s: point.flow_m3_s * row.factors.flow,
    shaftPower_W: Math.max(given.motorPower_W, LEAST_POWER_W) * drive.value * row.factors.power,
    lnReading: given.lnReading,
    lnForeseen,
    unknowns: [...motor.unknowns, drive.error, voltage.error, row.speedRatio.error],
    shared: [given.meter, ...flow.shared],
    own: [
      { flow_m3_s: 0, value: given.ownSd },
      ...(volts ? [{ flow_m3_s: 0, value: volts.ownRelativeSd }] : []),
      ...flow.own,
    ],
    path: point.path,
  };
}

/** The motor was read at the row's true flow; what is wrong with the flow is wrong here too. */
function flowErrors(point: ReadingPoint, row: RowState): Pick<PowerObservation, 'shared' | 'own'> {
  const { flow: factor } = row.factors;
  const inFlow = (e: { flow_m3_s: number }) => ({ flow_m3_s: e.flow_m3_s * factor, value: 0 });
  const flow_m3_s = point.flow_m3_s * factor;
  return {
    shared: [
      ...point.shared.filter((e) => e.flow_m3_s !== 0).map((e) => ({ ...inFlow(e), error: e.error })),
      { error: row.speedRatio.error, flow_m3_s: row.speedRatio.sd * flow_m3_s, value: 0 },
    ],
    own: point.own.filter((e) => e.flow_m3_s !== 0).map(inFlow),
  };
}

/**
 * Speed of a motor that turns with the wheel as a measure of its load: n = n_s·(1 − s_r·load·(V_r/V)²).
 * Source: US DOE fact sheet on motor load, voltage-compensated slip. Null for belts, brushed motors and plates without a slip.
 */
function slipObservation(point: ReadingPoint, row: RowState, tested: TestedMotor): PowerObservation | null {
  const { motor, drive } = tested;
  const { plate, current } = motor.at;
  const speed = point.speed_rpm;
  if (!drive.direct || speed === null || plate.synchronousSpeed_rpm === null || plate.speed_rpm === null) return null;
  const slip_rpm = plate.synchronousSpeed_rpm - plate.speed_rpm;
  if (!(slip_rpm > 0)) return null;
  const volts = point.electrical.voltage_V;
  const voltage_V = volts?.value ?? null;
  const rough = shaftPowerFromSlip({ at: motor.at, voltage_V, motorSpeed_rpm: speed });
  if (rough === null) return null;
  const synchronous = plate.synchronousSpeed_rpm * (current.ratedPower_W / plate.ratedPower_W);
  const voltageRatio =
    terminalVoltage(motor.at, boardVoltage({ at: motor.at, voltage_V }), rough.shaftPower_W) / current.voltage_V;
  const ratedPower_W = current.ratedPower_W * voltageRatio ** 2;
  const flow = flowErrors(point, row);
  const name = motor.unknowns[0]!.split('/').slice(0, -1).join('/');
  return {
    flow_m3_s: point.flow_m3_s * row.factors.flow,
    shaftPower_W: Math.max(rough.shaftPower_W, LEAST_POWER_W) * row.factors.power,
    lnReading: Math.log(speed),
    lnForeseen: (wheel_W, z) => {
      const load = ((wheel_W / row.factors.power) * Math.exp(-3 * row.speedRatio.sd * z[2]!)) / ratedPower_W;
      const speedThen = synchronous * (1 + FREQUENCY * z[1]!) - slip_rpm * Math.exp(PLATE_SLIP * z[0]!) * load;
      return Math.log(Math.max(speedThen, 0.05 * synchronous));
    },
    unknowns: [`${name}/slip`, `${row.path}/frequency`, row.speedRatio.error],
    shared: flow.shared,
    own: [{ flow_m3_s: 0, value: SPEED }, ...flow.own],
    path: point.path,
  };
}
