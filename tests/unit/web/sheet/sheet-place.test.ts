import { expect, it } from 'vitest';
import { outlineOfSheet, turnOfTable } from '../../../../web/sheet/sheet-place.ts';
import { cellAt, sheetOf } from './sheets.ts';

const rows = [0, 1].map((r) => [0, 1, 2].map((c) => cellAt(r, c, false)));

it('the rows of a table tell how it lies: level, on its side, upside down', () => {
  expect(turnOfTable(rows)).toBeCloseTo(0);
  const onItsSide = rows.map((row) =>
    row.map((cell) => ({ ...cell, box_px: [cell.box_px[1], 1000 - cell.box_px[0], 50, 120] as const })),
  );
  expect(turnOfTable(onItsSide)).toBeCloseTo(90);
  expect(Math.abs(turnOfTable(rows.map((row) => row.toReversed())))).toBeCloseTo(180);
  expect(turnOfTable([])).toBe(0);
});

it('a frame goes round all cells', () => {
  const reading = sheetOf([['current_A', 'A']], [[1]], { cells: rows });
  expect(outlineOfSheet(reading)).toEqual([
    [100, 400],
    [460, 400],
    [460, 500],
    [100, 500],
  ]);
  expect(outlineOfSheet(null)).toEqual([]);
});
