import { describe, expect, it } from 'vitest';
import { sayCell, sayColumn, sayWholeColumn } from '../../../../web/edits/change-sheet.ts';
import { doubtsOf, shownCells, shownColumns } from '../../../../web/sheet/shown-sheet.ts';
import { takenRows } from '../../../../web/sheet/taken-sheet.ts';
import type { SheetWork } from '../../../../web/sheet/sheet-work.ts';
import { cellAt, MM_WATER, sheetOf, workOfSheet } from './sheets.ts';

const reading = sheetOf(
  [
    ['opening', ''],
    ['orificeDiameter_m', 'mm'],
    ['staticPressure_Pa', 'mm WG'],
    ['current_A', null],
  ],
  [
    [1, 0.04, 264 * MM_WATER, 2.9],
    [2, 0.055, 267 * MM_WATER, null],
  ],
  {
    cells: [
      [cellAt(0, 0, true), cellAt(0, 1, false), cellAt(0, 2, false), cellAt(0, 3, false)],
      [cellAt(1, 0, false), cellAt(1, 1, false), cellAt(1, 2, true), cellAt(1, 3, false)],
    ],
  },
);
const textsOf = (work: SheetWork): string[][] => shownCells(work).map((row) => row.map(({ text }) => text));
const doubts = (work: SheetWork) => doubtsOf(shownColumns(work), shownCells(work));

describe('a sheet as it stands on the page', () => {
  it('shows every figure in the unit of its column, an empty cell empty', () => {
    expect(textsOf(workOfSheet(reading))).toEqual([
      ['1', '40', '264', '2.9'],
      ['2', '55', '267', ''],
    ]);
  });

  it('asks about doubted figures, but not about those the notebook has no place for', () => {
    expect(doubts(workOfSheet(reading))).toEqual([{ row: 1, column: 2 }]);
    expect(doubts(sayCell(1, 2, { seen: true })(workOfSheet(reading)))).toEqual([]);
    expect(doubts(sayWholeColumn(2)(workOfSheet(reading)))).toEqual([]);
  });

  it('takes a figure typed anew in the column’s unit', () => {
    const work = sayCell(1, 2, { text: '257,5' })(workOfSheet(reading));
    expect(shownCells(work)[1]![2]!.value).toBeCloseTo(257.5 * MM_WATER, 6);
    expect(shownCells(sayCell(1, 2, { text: '2S7' })(work))[1]![2]!.value).toBeNull();
  });

  it('asks for a unit it does not know, and takes the figures in the unit that is told', () => {
    const unread = sheetOf([['staticPressure_Pa', null]], [[120]]);
    const work = workOfSheet(unread);
    expect(doubts(work)).toEqual([{ row: null, column: 0 }]);
    expect(takenRows(shownColumns(work), shownCells(work))).toEqual([[]]);
    const told = sayColumn(0, { unit: 'mm water', seen: true })(work);
    expect(shownCells(told)[0]![0]!.value).toBeCloseTo(120 * MM_WATER, 6);
  });

  it('a column told to be in another unit than read means other values', () => {
    const told = sayColumn(2, { unit: 'Pa' })(workOfSheet(reading));
    expect(shownCells(told)[0]![2]!.value).toBe(264);
    expect(textsOf(told)[0]![2]).toBe('264');
  });

  it('asks about a column whose every figure is doubted, once; all its figures may be said right together', () => {
    const cells = [[cellAt(0, 0, true)], [cellAt(1, 0, true)], [cellAt(2, 0, true)]];
    const work = workOfSheet(sheetOf([['current_A', 'A']], [[2.9], [3.1], [null]], { cells }));
    expect(doubts(work)).toEqual([
      { row: null, column: 0 },
      { row: 0, column: 0 },
      { row: 1, column: 0 },
    ]);
    expect(doubts(sayWholeColumn(0)(sayColumn(0, { seen: true })(work)))).toEqual([]);
  });

  it('leaves out what nobody has looked at', () => {
    const work = workOfSheet(reading);
    const rows = takenRows(shownColumns(work), shownCells(work));
    expect(rows.map((row) => row.map(({ quantity }) => quantity))).toEqual([
      ['orificeDiameter_m', 'staticPressure_Pa', 'current_A'],
      ['opening', 'orificeDiameter_m'],
    ]);
    expect(rows[0]![1]!.text).toBe('264 mm water');
  });
});
