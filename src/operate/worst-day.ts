import type { CableEffect, WorstDay } from '../assessment.ts';
import {
  cableDrop,
  drawnBy,
  driveRatio,
  loadAt,
  lowVoltageEffect,
  smallestCable,
  startingVoltage,
  startTime,
  wheelInertia,
} from '../motor/index.ts';
import type { MotorAtSite, MotorLoad } from '../motor/index.ts';
import type { Candidate } from './candidate.ts';
import { criticalLoad } from './critical-load.ts';
import type { JudgedCase } from './judge-case.ts';
import { meterDoubts } from './meter-doubt.ts';
import { speedLimit } from './pulley-limit.ts';
import type { ShopFacts } from './shop-facts.ts';

/**
 * Everything about a motor's worst day: heaviest case (clean filters count, all gates too), lowest voltage, cable, start and
 * the speed at which motor or wheel gives up.
 * Source: `loadAt`, `lowVoltageEffect`, `cableDrop`, `startTime`, `speedLimit`; loads never include the derating, `usableShare` does.
 */
export function worstDay(
  candidate: Candidate,
  heaviest: JudgedCase | null,
  cases: readonly JudgedCase[],
  { loadAtMost }: ShopFacts,
): WorstDay {
  const { motor, estimate, blower, speed_rpm } = candidate;
  const loadOf = (wheel_W: number) => loadAt(motor, wheel_W).loadFraction;
  const point = heaviest?.points?.heaviest ?? null;
  const at = point ? loadAt(motor, point.shaftPower_W) : null;
  const required = cases.flatMap((c) => (c.result.required && c.points?.least ? [c.points.least.shaftPower_W] : []));
  const share = motor.singlePhase ? motor.singlePhase.availableShare[0] : 1;
  const usableShare = motor.usableShare * share;
  const capacity_W = motor.ratedPower_W * motor.serviceFactor * motor.drive.value;
  const byVoltage = criticalLoad((wheel_W) => loadAt(motor, wheel_W).currentRatioAtLowestVoltage, capacity_W);
  return {
    heaviest:
      heaviest && at
        ? {
            gatePlan: heaviest.result.gatePlan,
            filterState: heaviest.result.filterState,
            load: at.loadFraction,
            interval95: loadInterval(heaviest, at.loadFraction),
          }
        : null,
    lightestLoad: required.length > 0 ? loadOf(Math.min(...required)) : null,
    openLoad: estimate ? loadOf(estimate.best.shaftPower_W(estimate.best.flowScale_m3_s)) : null,
    loadAtMost,
    usableShare,
    plate_A: motor.plate.current_A * motor.connection.currentFactor,
    current_A: at?.current_A ?? null,
    lowest: at && lowestVoltage(motor, at),
    cable: at && cableEffect(motor, at),
    start: at && speed_rpm !== null ? start(candidate, at, speed_rpm) : null,
    speed:
      speed_rpm === null
        ? null
        : speedLimit(blower, speed_rpm, at?.loadFraction ?? null, Math.min(loadAtMost * usableShare, byVoltage)),
    meters: meterDoubts(blower, motor),
  };
}

/** 95 % of the draws, and the centre always inside. */
function loadInterval({ chances }: JudgedCase, centre: number): [number, number] {
  if (!chances) return [centre, centre];
  const sorted = Float64Array.from(chances.load).sort();
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!;
  return [Math.min(at(0.025), centre), Math.max(at(0.975), centre)];
}

function lowestVoltage(motor: MotorAtSite, at: MotorLoad): WorstDay['lowest'] {
  if (at.currentAtLowestVoltage_A === null || at.lowestTerminal_V === null) return null;
  const ratio = at.lowestTerminal_V / motor.current.voltage_V;
  return {
    voltage_V: at.lowestTerminal_V / motor.connection.voltageFactor,
    current_A: at.currentAtLowestVoltage_A,
    torqueLeft: lowVoltageEffect(ratio).torque,
    mayStall: at.mayStall,
  };
}

/** Voltages of a star or delta connection are √3 apart from the mains', those between line and neutral are the mains' own. */
const reconnection = ({ connection }: MotorAtSite) => (connection.kind === 'star-delta' ? connection.voltageFactor : 1);

function cableEffect(motor: MotorAtSite, at: MotorLoad): CableEffect | null {
  const { cable, current, plate } = motor;
  if (!cable || at.current_A === null) return null;
  const supply_V = motor.voltage_V / reconnection(motor);
  const { powerFactor } = drawnBy(current, at.shaftPower_W, at.terminal_V);
  const given = { supply_V, current_A: at.current_A, powerFactor, phases: plate.phases };
  const { drop_V, dropFraction } = cableDrop(cable, given);
  const enough_mm2 = smallestCable(cable, given);
  return {
    drop_V,
    dropFraction,
    startVolts: startRatio(motor) * (current.voltage_V / motor.voltage_V),
    enough_m2: enough_mm2 === null ? null : enough_mm2 * 1e-6,
  };
}

/** Volts at the terminals in a direct start at the usual voltage ÷ the motor's own [-]. */
function startRatio(motor: MotorAtSite, board_V = motor.voltage_V): number {
  const { cable, plate, connection, current } = motor;
  if (!cable) return board_V / current.voltage_V;
  const factor = reconnection(motor);
  const line = { ...plate, current_A: plate.current_A * connection.currentFactor };
  return (startingVoltage(line, cable, board_V / factor) * factor) / current.voltage_V;
}

/** Brushed motors start with plenty of torque, and what a capacitor leaves of a three-phase motor's nobody can say: no estimate. */
function start({ motor, blower }: Candidate, at: MotorLoad, speed_rpm: number): WorstDay['start'] {
  const { wheel, drive } = blower;
  if (motor.plate.kind !== 'induction' || motor.singlePhase || wheel.diameter_m == null) return null;
  const voltageRatio = startRatio(motor, motor.lowestVoltage_V ?? motor.voltage_V);
  const estimate = startTime({
    plate: { ...motor.plate, ratedPower_W: motor.ratedPower_W },
    inertia: wheelInertia({ ...wheel, diameter_m: wheel.diameter_m }),
    wheelSpeed_rpm: speed_rpm,
    ratio: driveRatio(drive).ratio,
    loadOfRating: at.shaftPower_W / motor.ratedPower_W,
    voltageRatio,
    startsBy: blower.motor.startsBy,
  });
  return { ...estimate, voltageRatio };
}
