import type { Warning } from '../issues/result.ts';
import type { Connection } from './connection.ts';
import { connectionOf } from './connection.ts';
import type { CurrentModel } from './current.ts';
import { currentModel } from './current.ts';
import type { UnbalanceEffect } from './derating.ts';
import { siteDerating, unbalanceEffect, usableServiceFactor } from './derating.ts';
import type { Cable } from './cable.ts';
import type { IdleShares } from './idle.ts';
import { idleKnown } from './idle.ts';
import type { WholePlate } from './whole-plate.ts';
import { wholePlate } from './plate.ts';
import { driveEfficiency, frequencyRatio } from './speed.ts';
import type { SinglePhaseFeed } from './supply.ts';
import { singlePhaseFeed } from './supply.ts';
import type { Drive, MotorPlate, Supply, SupplyCable } from './types.ts';

/** A motor, its drive, and where and on what mains it runs. */
export type MotorSituation = {
  motor: MotorPlate;
  drive: Drive;
  supply: Supply;
  /** [m]; unknown counts as low */
  altitude_m?: number | null;
  /** [°C] cooling air; unknown counts as what plates are made for */
  ambient_C?: number | null;
  /** between the board, where the mains' volts are read, and the motor; unknown counts as short and thick */
  cable?: SupplyCable | null;
  /** JSON Pointer of the blower, for the warnings */
  path?: string;
};

/** Everything about a motor that does not depend on its load: made once, asked for many loads. */
export type MotorAtSite = {
  plate: WholePlate;
  /** shaft power on this mains [W], and one relative standard deviation [-] */
  ratedPower_W: number;
  ratedPowerDoubt: number;
  /** the service factor that may be counted on here [-] */
  serviceFactor: number;
  /** share of rated power that altitude and heat leave [-]; not part of the load fraction */
  siteFactor: number;
  /** what unbalanced mains leaves; null where balanced, not known or not three phases */
  unbalance: (UnbalanceEffect & { unbalance: number }) | null;
  /** share of rated power that may be counted on here: altitude, heat, unbalance; not part of the load fraction [-] */
  usableShare: number;
  cable: Cable | null;
  drive: { value: number; sd: number };
  connection: Connection;
  /** usual and lowest voltage, in the plate's connection, before the cable takes its share [V] */
  voltage_V: number;
  lowestVoltage_V: number | null;
  current: CurrentModel;
  /** shares that flow without load, as known of this motor */
  idle: IdleShares;
  singlePhase: SinglePhaseFeed | null;
  warnings: Warning[];
};

/**
 * Rated shaft power on this mains.
 * @returns watts and one relative standard deviation
 * On a lower frequency than the plate's the motor loses power with its speed (60 Hz plate on 50 Hz: × 0.833); on a higher one it
 * gains none, because the voltage does not rise along. Plate watts that are input count times the efficiency.
 * Source: torque is bound by flux and copper, so power goes with speed.
 */
export function ratedShaftPower(motor: MotorPlate, supply: Supply): { value_W: number; relativeSd: number } {
  const { plate } = wholePlate(motor, supply);
  return {
    value_W: plate.ratedPower_W * Math.min(frequencyRatio(motor, supply), 1),
    relativeSd: plate.doubt.ratedPower,
  };
}

/** Puts plate, drive, mains and site together; see the parts for their sources. */
export function motorAtSite(situation: MotorSituation): MotorAtSite {
  const { motor, supply, altitude_m, path = '' } = situation;
  const { plate, warnings } = wholePlate(motor, supply, `${path}/motor`);
  const ratio = frequencyRatio(motor, supply);
  const connection = connectionOf(plate, supply, ratio, path, motor.fedThrough);
  const voltage_V = (supply.voltage_V ?? plate.voltage_V / connection.voltageFactor) * connection.voltageFactor;
  const idling_A = motor.idleCurrent_A == null ? null : motor.idleCurrent_A / connection.currentFactor;
  const { model: current, idle } = idleKnown(currentModel(plate, ratio), idling_A, voltage_V);
  const siteFactor = siteDerating(altitude_m, situation.ambient_C);
  const unbalance =
    supply.voltageUnbalance && plate.phases === 3 && supply.phases !== 1
      ? { ...unbalanceEffect(supply.voltageUnbalance), unbalance: supply.voltageUnbalance }
      : null;
  const feed = connection.kind === 'single-phase-feed' ? singlePhaseFeed(plate.ratedPower_W, plate.poles) : null;
  return {
    plate,
    ratedPower_W: plate.ratedPower_W * Math.min(ratio, 1),
    ratedPowerDoubt: plate.doubt.ratedPower,
    serviceFactor: usableServiceFactor(plate.serviceFactor, altitude_m),
    siteFactor,
    unbalance,
    usableShare: siteFactor * (unbalance?.powerFactor ?? 1),
    cable: cableOf(situation.cable),
    drive: driveEfficiency(situation.drive),
    connection,
    voltage_V,
    lowestVoltage_V: supply.lowestVoltage_V == null ? null : supply.lowestVoltage_V * connection.voltageFactor,
    current,
    idle,
    singlePhase: feed,
    warnings: [...warnings, ...connection.warnings, ...frequencyWarnings(plate, ratio, voltage_V, current, path)],
  };
}

/** Length and cross-section together make a cable; one of them alone says nothing. */
function cableOf(cable: SupplyCable | null | undefined): Cable | null {
  if (cable?.length_m == null || cable.crossSection_m2 == null) return null;
  return { length_m: cable.length_m, crossSection_mm2: 1e6 * cable.crossSection_m2, metal: cable.metal };
}

function frequencyWarnings(
  plate: WholePlate,
  ratio: number,
  voltage_V: number,
  current: CurrentModel,
  path: string,
): Warning[] {
  if (ratio === 1) return [];
  const flux = voltage_V / current.voltage_V;
  const [from, to] = [Math.round(plate.frequency_Hz), Math.round(plate.frequency_Hz * ratio)];
  const speed =
    ratio < 1
      ? `loses ${Math.round(100 * (1 - ratio))} % of its speed and power`
      : `turns ${Math.round(100 * (ratio - 1))} % faster: fan power rises with the cube of that, the motor's does not`;
  const warnings: Warning[] = [
    { code: 'other-frequency', text: `A ${from} Hz motor on ${to} Hz ${speed}.`, path: `${path}/motor/frequency_Hz` },
  ];
  if (flux > 1.1) {
    const fit = Math.round(current.voltage_V);
    const text = `On ${to} Hz this motor should get about ${fit} V. At ${Math.round(voltage_V)} V its iron saturates: it hums, idles on high amps and runs hot.`;
    warnings.push({ code: 'over-fluxed', text, path: `${path}/motor/voltage_V` });
  }
  return warnings;
}
