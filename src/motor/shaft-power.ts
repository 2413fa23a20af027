import { bracketedRoot } from '../numeric/root.ts';
import type { MotorAtSite } from './at-site.ts';
import type { CurrentModel } from './current.ts';
import { drawnBy } from './current.ts';
import { withIdleCurrent, withIdleShare } from './idle.ts';
import { terminalVoltage } from './terminals.ts';

/**
 * Shaft power of a motor from an electrical reading or its slip, with one standard deviation in two parts:
 * `sharedSd_W` comes from the motor and the meter and is the same for every reading, `ownSd_W` is this reading's alone.
 */
export type ShaftPowerReading = {
  shaftPower_W: number;
  sharedSd_W: number;
  ownSd_W: number;
  /** how rough this way is, in words */
  text: string;
};

/**
 * One relative standard deviation each [-]; what is left out takes these. Source: feasibility figures for clamp and watt meters;
 * plate amps are a maker's round figure for a motor that may differ by 2.5 % in efficiency and power factor.
 */
const METER = {
  clampShared: 0.015,
  clampOwn: 0.005,
  wattShared: 0.012,
  wattOwn: 0.012,
  plateAmps: 0.03,
  voltage: 0.005,
};

/** The motor a reading was taken on, and the volts it had. */
export type ReadingConditions = {
  at: MotorAtSite;
  /** of the mains while reading, before the cable [V]; unknown: its usual voltage */
  voltage_V?: number | null;
};

/**
 * Shaft power from line amps (one conductor in the clamp). Not proportional to load: an idling motor draws a third to nine tenths of
 * its plate amps, which is why little load is read very roughly.
 * @param idleCurrent_A amps with the belt off, if measured at about the same voltage; takes most of the doubt away
 * @returns null where amps say nothing about the motor (three-phase motor on one phase)
 * Source: circle-diagram model of `drawnBy`, inverted; doubts carried through by differences.
 */
export function shaftPowerFromAmps(
  reading: ReadingConditions & { current_A: number; idleCurrent_A?: number | null; relativeSd?: number | null },
): ShaftPowerReading | null {
  const { at } = reading;
  if (at.connection.kind === 'single-phase-feed') return null;
  const amps = reading.current_A / at.connection.currentFactor;
  const idle = reading.idleCurrent_A == null ? null : reading.idleCurrent_A / at.connection.currentFactor;
  const model = at.current;
  const board_V = boardVoltage(reading);
  const powerAt = (volts: number, model: CurrentModel, current = amps) =>
    powerAtCurrent(idle === null ? model : withIdleCurrent(model, idle, volts), current, volts);
  const volts = terminalVoltage(at, board_V, powerAt(board_V, model));
  const power = (model: CurrentModel, current = amps) => powerAt(volts, model, current);
  const shaftPower_W = power(model);
  const moved = (...others: [number, number]) => furthest(shaftPower_W, others);
  const scaled = (sd: number): [number, number] => [power(model, amps * (1 - sd)), power(model, amps * (1 + sd))];
  const plate = (sd: number) => power({ ...model, plateScale: model.plateScale * (1 + sd) });
  const plateAmps = Math.max(METER.plateAmps, at.plate.doubt.current);
  const sharedSd_W = Math.hypot(
    LEAST_DOUBT * model.ratedPower_W,
    ...motorDoubts(at).map(([low, high]) => moved(power(low), power(high))),
    moved(...scaled(METER.clampShared)),
    moved(plate(-plateAmps), plate(plateAmps)),
  );
  const ownSd_W = Math.hypot(moved(...scaled(reading.relativeSd ?? METER.clampOwn)), METER.voltage * shaftPower_W);
  return { shaftPower_W, sharedSd_W, ownSd_W, text: howRough('amps', shaftPower_W, Math.hypot(sharedSd_W, ownSd_W)) };
}

/**
 * Shaft power from watts drawn (watt meter, or the flashes of an energy meter): input less the losses of the motor.
 * Source: circle-diagram model of `drawnBy`, inverted in closed form; doubts carried through by differences.
 */
export function shaftPowerFromWatts(
  reading: ReadingConditions & { inputPower_W: number; relativeSd?: number | null },
): ShaftPowerReading {
  const { at, inputPower_W } = reading;
  const board_V = boardVoltage(reading);
  const volts = terminalVoltage(at, board_V, powerAtInput(at.current, inputPower_W, board_V));
  const power = (model: CurrentModel, watts = inputPower_W) => powerAtInput(model, watts, volts);
  const shaftPower_W = power(at.current);
  const moved = (...others: [number, number]) => furthest(shaftPower_W, others);
  const scaled = (sd: number): [number, number] => [
    power(at.current, inputPower_W * (1 - sd)),
    power(at.current, inputPower_W * (1 + sd)),
  ];
  const sharedSd_W = Math.hypot(
    ...motorDoubts(at).map(([low, high]) => moved(power(low), power(high))),
    moved(...scaled(METER.wattShared)),
  );
  const ownSd_W = moved(...scaled(reading.relativeSd ?? METER.wattOwn));
  return { shaftPower_W, sharedSd_W, ownSd_W, text: howRough('watts', shaftPower_W, Math.hypot(sharedSd_W, ownSd_W)) };
}

/** Volts of the mains in the plate's connection while a reading was taken, before the cable [V]. Source: definition, see `Connection`. */
export const boardVoltage = ({ at, voltage_V }: ReadingConditions) =>
  voltage_V == null ? at.voltage_V : voltage_V * at.connection.voltageFactor;

/** Near idle the answer stops at no load on one side: the other side tells the doubt. */
const furthest = (centre: number, others: readonly number[]) =>
  Math.max(...others.map((other) => Math.abs(other - centre)));
/** Amps below idle say "hardly any load", never exactly none: share of rated power [-]. Practice value. */
const LEAST_DOUBT = 0.02;

/** One sentence on how far such a reading can be trusted, at twice its standard deviation. Source: definition (normal law). */
export function howRough(way: 'amps' | 'watts' | 'slip', power_W: number, sd_W: number): string {
  const percent = Math.round((200 * sd_W) / Math.max(power_W, 1));
  const band = percent > 100 ? 'little more than a guess' : `good to about ± ${Math.max(percent, 1)} %`;
  return `Shaft power from ${way}: ${band} (19 times in 20).`;
}

/** Models one standard deviation down and up in each thing nobody knows of a motor. */
function motorDoubts(at: MotorAtSite): [CurrentModel, CurrentModel][] {
  const { current: model, plate, idle } = at;
  const vary = (change: (sign: 1 | -1) => Partial<CurrentModel>): [CurrentModel, CurrentModel] => [
    { ...model, ...change(-1) },
    { ...model, ...change(1) },
  ];
  const efficiency = (sign: number) => Math.min(plate.efficiency * (1 + sign * plate.doubt.efficiency), 0.995);
  const losses = (sign: number) => plate.ratedPower_W * (1 / efficiency(sign) - 1);
  const apparent = Math.hypot(plate.ratedPower_W + model.losses_W, model.reactive_var);
  const reactive = (sign: number) => {
    const factor = Math.min(plate.powerFactor * (1 + sign * plate.doubt.powerFactor), 1);
    return apparent * Math.sqrt(1 - factor * factor);
  };
  // Amps stay the plate's whatever its efficiency and power factor are in truth.
  const kept = (part: Partial<CurrentModel>): Partial<CurrentModel> => {
    const shifted = { ...model, ...part };
    const was = drawnBy(model, model.ratedPower_W, model.voltage_V).current_A;
    return {
      ...part,
      plateScale: (shifted.plateScale * was) / drawnBy(shifted, model.ratedPower_W, model.voltage_V).current_A,
    };
  };
  return [
    vary((sign) => kept({ losses_W: losses(sign) })),
    vary((sign) => kept({ reactive_var: reactive(sign) })),
    vary((sign) => ({ fixedLossShare: idle.fixedLoss + sign * idle.fixedLossSd })),
    vary((sign) => withIdleShare(model, idle.current * Math.exp(sign * idle.currentLnSd))),
  ];
}

/** Most load the inversion looks at: twice the rating, near standstill of an ordinary motor. */
const MOST_LOAD = 2;

function powerAtCurrent(model: CurrentModel, current_A: number, voltage_V: number): number {
  const top_W = MOST_LOAD * model.ratedPower_W;
  const off = (power_W: number) => drawnBy(model, power_W, voltage_V).current_A - current_A;
  if (off(0) >= 0) return 0;
  if (off(top_W) <= 0) return top_W;
  return bracketedRoot(off, 0, top_W, 1e-6 * model.ratedPower_W);
}

function powerAtInput(model: CurrentModel, input_W: number, voltage_V: number): number {
  if (model.kind === 'brushed') return input_W / (1 + model.losses_W / model.ratedPower_W);
  const spare_W = input_W - model.fixedLossShare * model.losses_W;
  if (spare_W <= 0) return 0;
  const rated_W = model.ratedPower_W * (voltage_V / model.voltage_V);
  const a = ((1 - model.fixedLossShare) * model.losses_W) / rated_W ** 2;
  return (2 * spare_W) / (1 + Math.sqrt(1 + 4 * a * spare_W));
}
