/** What the server reads from a sheet, by the names the page uses. */
export { COLUMN_QUANTITIES, type ColumnQuantity, type HeadQuantity } from '../../src/readings-sheet/quantities.ts';
export type { HeadField, SheetCell, SheetReading } from '../../src/readings-sheet/reading.ts';
