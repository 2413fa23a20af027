import type { Cable } from './cable.ts';
import { cableDrop } from './cable.ts';
import type { WholePlate } from './whole-plate.ts';
import type { SinglePhaseStart } from './types.ts';

/** A wheel as far as its inertia needs it. */
export type SpunWheel = { diameter_m: number; width_m?: number | null; mass_kg?: number | null };

/**
 * Moment of inertia of a fan wheel, with a range: from its mass where somebody weighed it, else a guess for sheet steel from its size.
 * @returns [kg m2], centre and a range that holds most wheels
 * A back plate and a shroud half as heavy of 2–4 mm steel (J = m·D²/8), blades and hub on top as a third; cast or wooden wheels lie
 * outside. Source: definition of inertia; plate thickness and shares are practice values.
 */
export function wheelInertia(wheel: SpunWheel): { centre: number; range: [low: number, high: number] } {
  if (!(wheel.diameter_m > 0))
    throw new RangeError(`diameter_m: expected a positive number, received ${wheel.diameter_m}`);
  if (wheel.mass_kg != null) {
    const weighed = wheel.mass_kg * wheel.diameter_m ** 2;
    return { centre: WEIGHED.centre * weighed, range: [WEIGHED.low * weighed, WEIGHED.high * weighed] };
  }
  const width_m = wheel.width_m ?? 0.25 * wheel.diameter_m;
  const thickness_m = Math.min(Math.max(0.006 * wheel.diameter_m, 0.0015), 0.004);
  const plate_kg = STEEL_kg_m3 * (Math.PI / 4) * wheel.diameter_m ** 2 * thickness_m;
  const plates = (1.5 * plate_kg * wheel.diameter_m ** 2) / 8;
  const blades = plates * (1 / 3) * (width_m / (0.25 * wheel.diameter_m));
  const centre = plates + blades;
  return { centre, range: [centre / 2, centre * 2] };
}

/** J ÷ (m·D²) [-]: a disc has 1/8, a ring 1/4, a wheel with hub and blades lies between. Source: definition of inertia. */
const WEIGHED = { centre: 0.155, low: 0.11, high: 0.22 };
/** Density of steel [kg/m3]. */
const STEEL_kg_m3 = 7850;

/** How a motor gets its wheel up to speed. */
export type StartEstimate = {
  /** time to full speed [s], centre and range; Infinity never: null where the motor has no torque to spare */
  seconds: number | null;
  range_s: [low: number, high: number] | null;
  /** longer than small motors and their overload relays usually stand */
  tooLong: boolean;
};

/**
 * Time a motor needs to start a wheel: t = J·ω / mean spare torque, J seen from the motor's side.
 * Mean motor torque over a start is taken as 1.6 × rated on three phases, 1.2 on one, times the square of the voltage; the fan takes on
 * average a third of its own torque on the way up. Start with gates closed where the wheel's power rises with flow.
 * @param loadOfRating shaft power at full speed ÷ rated power [-]
 * @param ratio wheel speed ÷ motor speed [-]
 * @param startsBy what gets a single-phase motor turning; unknown: between a start capacitor and a bare split phase
 * @param voltageRatio volts while starting ÷ plate volts [-]; cables and weak mains sink under 5–8 times the running amps
 * Source: momentum balance (definition); torque figures recalled from design B and capacitor-start motors; grade memory. An estimate, good to a factor 2.
 */
export function startTime(given: {
  plate: WholePlate;
  inertia: { centre: number; range: [low: number, high: number] };
  wheelSpeed_rpm: number;
  ratio: number;
  loadOfRating: number;
  voltageRatio?: number;
  startsBy?: SinglePhaseStart | null;
}): StartEstimate {
  const { plate, inertia, ratio } = given;
  const motorOmega = ((given.wheelSpeed_rpm / ratio) * 2 * Math.PI) / 60;
  const ratedTorque = plate.ratedPower_W / motorOmega;
  const own = plate.phases === 1 && given.startsBy != null ? TORQUE_BY_START[given.startsBy] : null;
  const mean = (own ?? MEAN_STARTING_TORQUE[plate.phases]) * (given.voltageRatio ?? 1) ** 2;
  const spare = ratedTorque * (mean - given.loadOfRating / 3);
  if (spare <= 0) return { seconds: null, range_s: null, tooLong: true };
  const seconds = (wheel_kg_m2: number) =>
    ((wheel_kg_m2 * ratio ** 2 + ownInertia(plate.ratedPower_W)) * motorOmega) / spare;
  const centre = seconds(inertia.centre);
  return {
    seconds: centre,
    range_s: [seconds(inertia.range[0]), seconds(inertia.range[1])],
    tooLong: centre > LONG_START_S,
  };
}

/**
 * Volts left at the motor's terminals in the moment of a direct start at the end of a cable [V].
 * @param supply_V volts at the board, sunk as they may be [V]
 * A start draws about 6.5 times the plate's amps at a power factor of 0.4; less at less voltage, which is left out on the safe side.
 * Source: NEMA MG 1 design B, 6–7 times, recalled.
 */
export function startingVoltage(plate: WholePlate, cable: Cable, supply_V: number): number {
  const start = { supply_V, current_A: STARTING_CURRENT * plate.current_A, powerFactor: 0.4, phases: plate.phases };
  return cableDrop(cable, start).voltageAtMotor_V;
}

/** Amps of a direct start ÷ plate amps [-]. */
const STARTING_CURRENT = 6.5;
/** Mean torque over a direct start ÷ rated torque [-]. Recalled: 3 phases between locked-rotor 2 and pull-up 1.4; 1 phase capacitor. */
const MEAN_STARTING_TORQUE = { 3: 1.6, 1: 1.2 } as const;
/** The same by the way a single-phase motor starts. Recalled from handbooks: locked-rotor torque 2–3.5, 0.3–0.7, 1–1.7, 0.5–0.8; grade memory. */
const TORQUE_BY_START = {
  'start-capacitor': 1.6,
  'run-capacitor': 0.8,
  'split-phase': 1.2,
  'shaded-pole': 0.7,
} as const;
/** Overload relays of class 10 trip in under 10 s at 7.2 times their setting. Source: IEC 60947-4-1. */
const LONG_START_S = 8;
/** Inertia of the motor's own rotor [kg m2], about 0.0015 at 1 kW. Practice value from catalogues. */
const ownInertia = (ratedPower_W: number) => 0.0015 * (ratedPower_W / 1000) ** 1.3;
