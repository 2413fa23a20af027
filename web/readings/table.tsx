import type { ReadingsEvidence } from '../../src/job/types.ts';
import { Icon } from '../drawings/icons.tsx';
import { removeRow } from '../edits/remove-row.ts';
import { halfTyped, job, perform } from '../state/job.ts';
import { textsWithout } from '../state/pointer.ts';
import { answered } from '../state/assessment.ts';
import { texts } from '../texts/index.ts';
import { columnsFor, type Column } from './columns.ts';
import { ReadingCell, unitOfColumn } from './cell.tsx';
import { waitingRows } from './planned-rows.ts';

/** The readings as they would stand in a notebook; rows whose tube is not read yet wait below, planned or empty. */
export function ReadingsTable({ path, evidence, all }: { path: string; evidence: ReadingsEvidence; all: boolean }) {
  const t = texts.value.readings;
  const rowsPath = `${path}/rows`;
  const columns = columnsFor(evidence.rig.method, evidence.rows, all, evidence.rig.side !== 'outlet');
  const count = evidence.rows.length;
  const waiting = waitingRows(halfTyped.value, rowsPath, count);
  const shown = count + Math.max(1, waiting);
  const warnings = answered.value?.assessment.warnings ?? [];
  const doubted = (row: number): boolean => warnings.some((w) => w.path.startsWith(`${rowsPath}/${row}`));
  const remove = (index: number): void => {
    if (index < count) perform(removeRow(job.value, { rowsPath, index }));
    halfTyped.value = textsWithout(halfTyped.value, rowsPath, index);
  };
  return (
    <div class="readings-scroll">
      <table class="readings-table">
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.field} scope="col">
                {columnName(column)}
                <bdi>{unitOfColumn(column)}</bdi>
              </th>
            ))}
            <th>
              <span class="unseen">{texts.value.common.remove}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: shown }, (_, row) => (
            <tr key={row} class={row >= count ? 'waiting' : doubted(row) ? 'doubted' : undefined}>
              {columns.map((column) => (
                <td key={column.field}>
                  <ReadingCell
                    rowPath={`${rowsPath}/${row}`}
                    column={column}
                    columns={columns}
                    label={t.cell(columnName(column), String(row + 1))}
                  />
                </td>
              ))}
              <td>
                {(row < count || waiting > row - count) && (
                  <button
                    type="button"
                    class="icon"
                    aria-label={t.removeRow(String(row + 1))}
                    onClick={() => remove(row)}
                  >
                    <Icon name="close" size={18} />
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const columnName = (column: Column): string => texts.value.readings.columns[column.field];
