import { VerdictMark } from '../drawings/marks.tsx';
import { Crop } from '../plate/crop.tsx';
import { texts } from '../texts/index.ts';
import type { ShownCell, ShownColumn, Doubt } from './shown-sheet.ts';

type Props = {
  columns: readonly ShownColumn[];
  cells: readonly (readonly ShownCell[])[];
  photo: { photoId: string; width_px: number; height_px: number };
  turn_deg: number;
  at: Doubt | null;
  onPick: (place: Doubt) => void;
};

/** The sheet's table, each figure under its piece of the photo; a tap brings it up large. */
export function SheetTable({ columns, cells, photo, turn_deg, at, onPick }: Props) {
  const t = texts.value.sheet;
  const nameOf = ({ quantity }: ShownColumn): string => (quantity ? t.columns[quantity] : t.unknownColumn);
  const isAt = (row: number | null, column: number): boolean => at?.row === row && at.column === column;
  return (
    <div class="sheet-scroll">
      <table class="sheet-table">
        <thead>
          <tr>
            {columns.map((column, i) => (
              <th key={i} scope="col">
                <button
                  type="button"
                  class={isAt(null, i) ? 'at' : undefined}
                  onClick={() => onPick({ row: null, column: i })}
                >
                  {column.isAsked && <VerdictMark verdict="unsure" size={16} />}
                  {nameOf(column)}
                  <bdi>{column.form === null ? '' : (column.unit ?? t.whichUnit)}</bdi>
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {cells.map((row, r) => (
            <tr key={r}>
              {row.map((cell, c) => (
                <td key={c}>
                  <button
                    type="button"
                    class={`sheet-cell${cell.isAsked && columns[c]!.form ? ' doubted' : ''}${isAt(r, c) ? ' at' : ''}`}
                    aria-label={cellLabel(nameOf(columns[c]!), cell)}
                    onClick={() => onPick({ row: r, column: c })}
                  >
                    {cell.cell?.box_px && (
                      <Crop photo={photo} box={cell.cell.box_px} turn_deg={turn_deg} isCell alt="" />
                    )}
                    <bdi>{cell.text === '' ? '–' : cell.text}</bdi>
                  </button>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function cellLabel(column: string, { row, text, isAsked }: ShownCell): string {
  const { sheet, readings } = texts.value;
  const what = `${readings.cell(column, String(row + 1))}: ${text || sheet.empty}`;
  return isAsked ? `${what}. ${texts.value.plate.asks.doubted}` : what;
}
