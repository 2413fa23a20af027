export type { Drive, MotorPlate, SinglePhaseStart, Supply, SupplyCable } from './types.ts';
export { wholePlate } from './plate.ts';
export type { WholePlate } from './whole-plate.ts';
export type { PlateField } from './plate-field.ts';
export { driveEfficiency, driveRatio, frequencyRatio, runSpeed } from './speed.ts';
export type { RunSpeed } from './speed.ts';
export { plateFrequency, polesOf, synchronousSpeed } from './synchronous.ts';
export { motorAtSite, ratedShaftPower } from './at-site.ts';
export type { MotorAtSite, MotorSituation } from './at-site.ts';
export { terminalVoltage } from './terminals.ts';
export { idleKnown, withIdleShare } from './idle.ts';
export type { IdleShares } from './idle.ts';
export { loadAt, motorLoad } from './load.ts';
export type { MotorLoad } from './load.ts';
export { currentAtLowVoltage, currentModel, drawnBy, IDLE_SHARES, inputPower } from './current.ts';
export type { CurrentModel, Drawn } from './current.ts';
export { connectionOf } from './connection.ts';
export type { Connection } from './connection.ts';
export {
  siteDerating,
  STANDARD_ALTITUDE_M,
  unbalanceEffect,
  usableServiceFactor,
  voltageUnbalance,
} from './derating.ts';
export type { UnbalanceEffect } from './derating.ts';
export { lowVoltageEffect, mayStall, PULL_OUT_TORQUE, singlePhaseFeed } from './supply.ts';
export type { LowVoltageEffect, SinglePhaseFeed } from './supply.ts';
export {
  fullLoadCurrent,
  HORSEPOWER_W,
  iecEfficiency,
  typicalEfficiency,
  typicalPowerFactor,
  usEfficiency,
} from './typical.ts';
export { boardVoltage, shaftPowerFromAmps, shaftPowerFromWatts } from './shaft-power.ts';
export type { ReadingConditions, ShaftPowerReading } from './shaft-power.ts';
export { shaftPowerFromSlip, slipLoad } from './slip.ts';
export { powerFromMeterFlashes } from './energy-meter.ts';
export { loadFromCurrent, loadFromCurrentAndIdle, loadFromInput } from './quick-load.ts';
export { CABLE_SIZES_mm2, cableDrop, crossSectionOfAwg, crossSectionOfSwgCable, smallestCable } from './cable.ts';
export type { Cable, CableDrop } from './cable.ts';
export { startingVoltage, startTime, wheelInertia } from './starting.ts';
export type { SpunWheel, StartEstimate } from './starting.ts';
export {
  beltSpeed,
  currentAfterSpeedChange,
  MOST_BELT_SPEED_m_s,
  PULLEY_SIZES_m,
  pulleyPairs,
  SMALLEST_PULLEY_m,
  speedRatioMotorStands,
} from './pulleys.ts';
export type { PulleyPair } from './pulleys.ts';
export { motorCautions } from './cautions.ts';
export type { MotorCaution } from './cautions.ts';
