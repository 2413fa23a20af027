/** Home-made test readings: from rigs and rows to points of the blower's curve with their errors. */
export { addedFlowDoubts, tubeStretch, type AddedDoubt } from './added-doubts.ts';
export { testAir } from './bench.ts';
export { checkReadings } from './check.ts';
export { cutPlan, PLAN_LENGTH, type CutPlan, type CutPlanRequest, type CutStep, type StepRole } from './cut-plan.ts';
export { cuttableHoles, HOLE_RATIOS, type Cutting } from './cut-sizes.ts';
export { energyMeterPower } from './energy-meter.ts';
export { flowDoubt, readingDoubt } from './errors.ts';
export type { Expected, ForeseenCurve } from './expected.ts';
export type { Electrical, ElectricalReading } from './electrical.ts';
export {
  dischargeCoefficient,
  expansibility,
  leastReynolds,
  orificePlateFlow,
  type OrificePlate,
  type Tappings,
} from './orifice-plate.ts';
export { tubePressure, waterDensity, type Tube } from './manometer.ts';
export { METHODS, methodNamed, type Method } from './methods/index.ts';
export { reduceReadings, type Effect, type ReadingPoint, type ReducedReadings } from './reduce.ts';
export { METHOD_NAMES, Readings, type Rig, type Row } from './schema.ts';
export {
  circularTraverse,
  LOG_TCHEBYCHEFF_PER_RADIUS,
  LOG_TCHEBYCHEFF_PER_SIDE,
  rectangularTraverse,
  type TraverseRule,
} from './traverse.ts';
export { DOUBTS, FLOW_DOUBT, type Doubt } from './uncertainty.ts';
