import { fromBase, toBase, unitByName, type Quantity } from '../../src/units/index.ts';
import { readQuantity } from '../forms/quantity-text.ts';
import { COLUMN_FORMS, unitOnSheet } from './column-forms.ts';
import type { ColumnQuantity, SheetCell, SheetReading } from './sheet-reading.ts';
import { cellKey, type SheetWork } from './sheet-work.ts';

/** A column as it stands on the page; `isAsked`: what it shows or its unit must be told or looked at. */
export type ShownColumn = {
  readonly quantity: ColumnQuantity | null;
  readonly form: Quantity | null;
  readonly unit: string | null;
  readonly isAsked: boolean;
};

/** A cell as it stands on the page: as written, in its column's unit. */
export type ShownCell = {
  readonly row: number;
  readonly column: number;
  readonly text: string;
  /** base unit; null where it is empty, cannot be read, or its column has no unit yet */
  readonly value: number | null;
  readonly cell: SheetCell | null;
  /** to be looked at before it goes into the notebook */
  readonly isAsked: boolean;
  readonly isSaid: boolean;
};

/** The columns: what was said of them, and for all else what was read. */
export function shownColumns({ reading, columns }: SheetWork): ShownColumn[] {
  return (reading?.columns ?? []).map((read, index) => {
    const said = columns[index] ?? {};
    const quantity = said.quantity ?? read.quantity;
    const form = quantity && COLUMN_FORMS[quantity];
    const unit = said.unit ?? readUnit(read.unit, form);
    const isOpen = quantity === null || (form !== null && unit === null);
    const isDoubted = isWhollyDoubted(reading!, index) && form !== null;
    return { quantity, form, unit, isAsked: isOpen || (isDoubted && !said.seen) };
  });
}

/** The reader doubts every figure of a column where it doubts the column. */
const isWhollyDoubted = ({ cells }: SheetReading, column: number): boolean =>
  cells.length > 1 && cells.every((row) => row[column]?.needsReview === true);

/** Quantities that sheets write in one unit only. */
const ONLY_UNIT: Partial<Record<Quantity, string>> = { current: 'A', speed: 'rpm' };

const readUnit = (spelled: string | null, form: Quantity | null): string | null =>
  unitOnSheet(spelled, form) ?? (form ? ONLY_UNIT[form] : undefined) ?? null;

/** The cells, row by row. */
export function shownCells(work: SheetWork): ShownCell[][] {
  const { reading } = work;
  if (!reading) return [];
  const columns = shownColumns(work);
  return reading.rows.map((values, row) =>
    columns.map((column, index) => shownCell(work, column, row, index, values[index] ?? null)),
  );
}

function shownCell(work: SheetWork, shown: ShownColumn, row: number, column: number, read: number | null): ShownCell {
  const { reading } = work;
  const cell = reading?.cells[row]?.[column] ?? null;
  const said = work.cells[cellKey(row, column)];
  const writtenIn = readUnit(reading?.columns[column]?.unit ?? null, shown.form);
  const readText = cell?.asPrinted || (read === null ? '' : asWritten(read, writtenIn, shown.form));
  const text = said?.text ?? readText;
  const isAsRead = read !== null && text === readText && writtenIn === shown.unit;
  const isSaid = said !== undefined;
  const isEmpty = read === null && readText === '' && isWhollyDoubted(reading!, column);
  return {
    row,
    column,
    text,
    value: isAsRead ? read : valueOf(text, shown),
    cell,
    isAsked: cell?.needsReview === true && !isSaid && !isEmpty,
    isSaid,
  };
}

/** Figures of hand-written sheets have no more than this many places that count. */
const PLACES = 6;

function asWritten(value: number, unit: string | null, form: Quantity | null): string {
  const known = unit && form ? unitByName(unit, form) : null;
  return String(Number((known ? fromBase(value, known) : value).toPrecision(PLACES)));
}

function valueOf(text: string, { form, unit }: ShownColumn): number | null {
  if (text.trim() === '') return null;
  if (form === null) {
    const plain = Number(text.replace(',', '.'));
    return Number.isFinite(plain) ? plain : null;
  }
  if (unit === null) return null;
  const known = unitByName(unit, form);
  const plain = Number(text.trim().replace(',', '.'));
  if (known && Number.isFinite(plain)) return toBase(plain, known);
  const read = readQuantity(text, form, unit);
  return read.ok ? read.si : null;
}

/** What has to be looked at, in the order in which it is asked: columns before their figures, then row by row. */
export type Doubt = { row: number | null; column: number };

/** Figures of a column that the notebook has no place for need no look. */
export function doubtsOf(columns: readonly ShownColumn[], cells: readonly (readonly ShownCell[])[]): Doubt[] {
  const ofColumns = columns.flatMap(({ isAsked }, column) => (isAsked ? [{ row: null, column }] : []));
  const ofCells = cells
    .flat()
    .filter(({ isAsked, column }) => isAsked && columns[column]?.form !== null)
    .map(({ row, column }) => ({ row, column }));
  return [...ofColumns, ...ofCells];
}
