import type { Quantity } from '../../src/units/index.ts';
import { withTyped } from '../state/as-typed.ts';
import { fieldAt, type BoundField } from '../forms/field-at.ts';
import { QuantityBox } from '../forms/quantity-box.tsx';
import { edit, endStep, halfTyped, job, perform, setHalfTyped } from '../state/job.ts';
import { valueAt } from '../state/pointer.ts';
import { texts } from '../texts/index.ts';
import { digits, unitFor } from '../words/say.ts';
import type { Column } from './columns.ts';
import { listText, readList } from './list-text.ts';
import { rowFromTexts } from './pending-row.ts';

type Props = { rowPath: string; column: Column; columns: readonly Column[]; label: string };

export const unitOfColumn = (column: Column): string => unitFor(column.quantity);

/** One cell of the table of readings; the same input before and after its row has a place in the job, so focus stays. */
export function ReadingCell({ rowPath, column, columns, label }: Props) {
  const path = `${rowPath}/${column.field}`;
  const unit = unitOfColumn(column);
  const exists = valueAt(job.value, rowPath) !== undefined;
  const field = !exists
    ? pendingField(path, rowPath, columns)
    : column.list
      ? listField(path, column.quantity, unit)
      : fieldInRow(path, column, unit);
  if (column.list) return <ListBox field={field} label={label} />;
  return <QuantityBox {...field} label={label} quantity={column.quantity} unit={unit} inCell />;
}

const fieldInRow = (path: string, column: Column, unit: string): BoundField =>
  fieldAt({
    path,
    quantity: column.quantity,
    unit,
    note: 'row',
    required: column.field === 'staticPressure_Pa',
    sign: column.sign,
    bare: true,
  });

function pendingField(path: string, rowPath: string, columns: readonly Column[]): BoundField {
  return {
    text: halfTyped.value[path] ?? '',
    amiss: undefined,
    onLeave: endStep,
    onText: (text) => {
      setHalfTyped(path, text === '' ? null : text);
      takeFinishedRows(rowPath, columns);
    },
  };
}

/** Rows enter the job from the top: one that is finished before those above it waits for them. */
function takeFinishedRows(rowPath: string, columns: readonly Column[]): void {
  const rowsPath = rowPath.slice(0, rowPath.lastIndexOf('/'));
  for (;;) {
    const next = `${rowsPath}/${(valueAt(job.value, rowsPath) as unknown[]).length}`;
    const edited = rowFromTexts(job.value, next, columns, halfTyped.value, unitOfColumn);
    if (!edited) return;
    perform(edited, `${next}/staticPressure_Pa`);
    for (const taken of edited.taken) setHalfTyped(taken, null);
  }
}

function listField(path: string, quantity: Quantity, unit: string): BoundField {
  const values = valueAt(job.value, path) as number[] | undefined;
  const typed = job.value.asTyped?.[path];
  return {
    text: halfTyped.value[path] ?? typed ?? listText(values, unit),
    amiss: halfTyped.value[path] === undefined ? undefined : texts.value.fields.notUnderstood(unit),
    onLeave: endStep,
    onText: (text) => {
      const list = readList(text, quantity, unit);
      setHalfTyped(path, list === null ? text : null);
      if (list) edit('row', (before) => withTyped(before, path, list.length > 0 ? list : undefined, text), path);
    },
  };
}

/** Signs that fit on one line of a list cell. */
const LINE = 20;

/** Many readings in one cell: it grows with them, and says how many it holds, so that none is forgotten. */
function ListBox({ field, label }: { field: BoundField; label: string }) {
  const count = field.text.split(/[\s;]+/).filter((part) => part !== '').length;
  return (
    <div class="field in-cell in-list">
      <textarea
        class="quantity"
        rows={Math.max(1, Math.ceil((field.text.length + 1) / LINE))}
        autocomplete="off"
        value={field.text}
        placeholder="– – –"
        aria-label={label}
        aria-invalid={field.amiss ? true : undefined}
        onInput={(event) => field.onText(event.currentTarget.value)}
        onBlur={field.onLeave}
      />
      {count > 0 && <small>{texts.value.readings.points(digits(String(count)))}</small>}
    </div>
  );
}
