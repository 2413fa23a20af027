export { readSheetIn } from './read-sheet-in.ts';
export type { SheetAids, SheetStep } from './read-sheet-in.ts';
export type { HeadField, SheetCell, SheetColumn, SheetReading } from './reading.ts';
export { COLUMN_QUANTITIES, HEAD_QUANTITIES, type ColumnQuantity, type HeadQuantity } from './quantities.ts';
