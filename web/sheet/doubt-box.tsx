import { sayCell, sayColumn, sayWholeColumn } from '../edits/change-sheet.ts';
import { Icon } from '../drawings/icons.tsx';
import { unitsOf } from '../../src/units/index.ts';
import { unitLabel } from '../photo/unit-labels.ts';
import { Crop } from '../plate/crop.tsx';
import { endStep } from '../state/job.ts';
import { texts } from '../texts/index.ts';
import { digits, sayNumber } from '../words/say.ts';
import { COLUMN_QUANTITIES, type ColumnQuantity } from './sheet-reading.ts';
import type { SheetWork } from './sheet-work.ts';
import type { Doubt, ShownCell, ShownColumn } from './shown-sheet.ts';

const QUANTITIES = Object.keys(COLUMN_QUANTITIES) as ColumnQuantity[];

type Props = {
  at: Doubt;
  /** doubts that are left */
  left: number;
  work: SheetWork;
  columns: readonly ShownColumn[];
  cells: readonly (readonly ShownCell[])[];
  turn_deg: number;
  change: (how: (before: SheetWork) => SheetWork, merge?: string | null) => void;
  /** on to the next doubt, or away where none is left */
  onNext: () => void;
};

/** One figure or column, large, at the foot of the page where a thumb rests: right, or typed anew; then comes the next. */
export function DoubtBox(props: Props) {
  const { at, left, columns, onNext } = props;
  const t = texts.value.sheet;
  const column = columns[at.column]!;
  const name = column.quantity ? t.columns[column.quantity] : t.unknownColumn;
  return (
    <div class="doubt-box">
      <div class="box" role="group" aria-label={t.doubtBox}>
        <div class="doubt-head">
          <h2 class="small-head">{at.row === null ? name : texts.value.readings.cell(name, sayNumber(at.row + 1))}</h2>
          <span class="second">{t.left(left, digits(String(left)))}</span>
          <button type="button" class="icon" aria-label={texts.value.common.close} onClick={onNext}>
            <Icon name="close" size={18} />
          </button>
        </div>
        {at.row === null ? <ColumnDoubt {...props} column={column} /> : <CellDoubt {...props} row={at.row} />}
      </div>
    </div>
  );
}

function CellDoubt({ at, row, work, columns, cells, turn_deg, change, onNext }: Props & { row: number }) {
  const t = texts.value;
  const shown = cells[row]?.[at.column];
  const column = columns[at.column]!;
  if (!shown) return null;
  const { cell, text, isSaid } = shown;
  return (
    <>
      {cell?.box_px && <Crop photo={work} box={cell.box_px} turn_deg={turn_deg} isCell alt={t.sheet.cropAlt(text)} />}
      <div class="figure-field">
        <label class="field">
          <span class="unseen">{t.sheet.asWritten}</span>
          <input
            class="quantity"
            inputMode="decimal"
            autocomplete="off"
            value={text}
            placeholder="–"
            onInput={(event) =>
              change(sayCell(row, at.column, { text: event.currentTarget.value }), `${row} ${at.column}`)
            }
            onBlur={endStep}
          />
        </label>
        <bdi class="second">{column.unit}</bdi>
        <button
          type="button"
          class="press fill confirm"
          onClick={() => {
            if (!isSaid) change(sayCell(row, at.column, { seen: true }));
            onNext();
          }}
        >
          {t.plate.confirm}
        </button>
      </div>
    </>
  );
}

function ColumnDoubt({ at, column, cells, change, onNext }: Props & { column: ShownColumn }) {
  const t = texts.value.sheet;
  const isTold = column.quantity !== null && (column.form === null || column.unit !== null);
  const hasDoubts = cells.some((row) => row[at.column]?.isAsked);
  return (
    <>
      <div class="axis-fields two">
        <label class="field">
          <span class="label">{texts.value.photo.whatIsIt}</span>
          <select
            value={column.quantity ?? ''}
            onChange={(event) =>
              change(sayColumn(at.column, { quantity: event.currentTarget.value as ColumnQuantity, unit: undefined }))
            }
          >
            {column.quantity === null && <option value="">{t.unknownColumn}</option>}
            {QUANTITIES.map((quantity) => (
              <option key={quantity} value={quantity}>
                {t.columns[quantity]}
              </option>
            ))}
          </select>
        </label>
        {column.form && (
          <label class="field">
            <span class="label">{texts.value.photo.unit}</span>
            <select
              class="ltr"
              value={column.unit ?? ''}
              onChange={(event) => change(sayColumn(at.column, { unit: event.currentTarget.value }))}
            >
              {column.unit === null && <option value="">{t.whichUnit}</option>}
              {unitsOf(column.form).map(({ unit }) => (
                <option key={unit} value={unit}>
                  {unitLabel(unit)}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      {column.form === null && column.quantity && <p class="second">{t.noPlace}</p>}
      <div class="actions">
        {hasDoubts && column.form && isTold && (
          <button
            type="button"
            class="press"
            onClick={() => {
              change((before) => sayWholeColumn(at.column)(sayColumn(at.column, { seen: true })(before)));
              onNext();
            }}
          >
            {t.allRight}
          </button>
        )}
        <button
          type="button"
          class="press fill"
          disabled={!isTold}
          onClick={() => {
            change(sayColumn(at.column, { seen: true }));
            onNext();
          }}
        >
          {texts.value.plate.confirm}
        </button>
      </div>
    </>
  );
}
