/**
 * Ducts: from a job's ductwork to losses, flows and speeds. The only door of this folder.
 *
 *   ductworkIssues → compileNetwork → solveAtFlow / solveWithFan → transportOf, pressureBudget, respond
 */
export { LOSS_PARTS, pressureBudget, worstPickup } from './budget.ts';
export type { PressureBudget } from './budget.ts';
export { ductworkIssues, ductworkWarnings } from './check.ts';
export type { Ductwork, Pickup, Section } from './ductwork.ts';
export { BLOWER } from './ductwork.ts';
export { DOUBT_KINDS } from './elements/element.ts';
export type { DoubtKind, ElementKind, FilterState, LossPart, LossTerm } from './elements/element.ts';
export { Element, ELEMENT_KINDS, elementKind } from './elements/index.ts';
export { ductHandbook } from './handbook.ts';
export { createState, totalLoss_Pa, totalSlope } from './flow-state.ts';
export type { FlowState } from './flow-state.ts';
export { hoodSuction_Pa } from './hood-suction.ts';
export { MATERIAL_NAMES, MATERIALS } from './materials.ts';
export type { Material } from './materials.ts';
export { compileNetwork } from './network.ts';
export type { Conditions, Network } from './network.ts';
export { dustyPipes, resizedRun } from './resize.ts';
export { respond } from './respond.ts';
export type { Response } from './respond.ts';
export type { FanCurve } from './iterate.ts';
export { solveAtFlow, solveWithFan, systemLoss } from './solve.ts';
export * as tables from './tables/index.ts';
export { termLoss_Pa } from './term-loss.ts';
export { lowestVelocity_m_s, transportOf } from './velocity.ts';
export type { Transport, TransportRun } from './velocity.ts';
