export { readPlate } from './read-plate.ts';
export { readPlateIn } from './read-plate-in.ts';
export type { PlateAids, PlateStep } from './read-plate-in.ts';
export { FIELD_NAMES } from './reading.ts';
export type { FieldName, FieldValue, PlateField, PlateFields, PlateReading, Rating } from './reading.ts';
