import { Fragment } from 'preact';
import type { Warning } from '../../src/issues/result.ts';
import type { ReadingsEvidence } from '../../src/job/types.ts';
import { Icon } from '../drawings/icons.tsx';
import { removeRow } from '../edits/remove-row.ts';
import { halfTyped, job, perform } from '../state/job.ts';
import { textsWithout } from '../state/pointer.ts';
import { remarksAt } from '../state/remarks.ts';
import { texts } from '../texts/index.ts';
import { warningWords } from '../words/issue-words.ts';
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
  const remarksOn = (row: number): Warning[] => (row < count ? remarksAt(`${rowsPath}/${row}`) : []);
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
          {Array.from({ length: shown }, (_, row) => {
            const said = remarksOn(row);
            return (
              <Fragment key={row}>
                <tr class={row >= count ? 'waiting' : said.length > 0 ? 'doubted' : undefined}>
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
                {said.length > 0 && <RowRemarks said={said} across={columns.length + 1} />}
              </Fragment>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

/** What is doubted about a reading, under it: there it can be mended. */
function RowRemarks({ said, across }: { said: readonly Warning[]; across: number }) {
  return (
    <tr class="row-remarks">
      <td colSpan={across} role="status">
        {said.map((warning) => (
          <p key={warning.code + warning.path}>{warningWords(warning, texts.value)}</p>
        ))}
      </td>
    </tr>
  );
}

const columnName = (column: Column): string => texts.value.readings.columns[column.field];
