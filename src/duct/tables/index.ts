/** Loss coefficients as data: one file per family, each row with its source and doubt. */
export { INLET_ELBOWS, INLET_SWIRL } from './blower-inlets.ts';
export { branchEntry, BRANCH_ENTRIES } from './branch-entries.ts';
export { alongRows } from './coefficient.ts';
export type { Coefficient, Rows } from './coefficient.ts';
export { CYCLONE_PROPORTIONS, CYCLONE_SHAPES, cycloneSizes } from './cyclone-proportions.ts';
export type { CycloneShape } from './cyclone-proportions.ts';
export { cycloneCoefficient, CYCLONE_MODELS, UNKNOWN_CYCLONE } from './cyclones.ts';
export * from './elbows.ts';
export { BELL_MOUTHS, ENTRIES, ENTRY_NAMES, entryCoefficient, TAPERED_HOODS } from './entries.ts';
export type { EntryName } from './entries.ts';
export { fittingRecord, FITTINGS, FITTING_NAMES } from './fittings.ts';
export type { FittingName, FittingRecord } from './fittings.ts';
export { gate, GATES } from './gates.ts';
export { reducer, USUAL_CONE_ANGLE_DEG } from './reducers.ts';
