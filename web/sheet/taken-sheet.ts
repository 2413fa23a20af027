import type { SheetFigure, TakeSheet } from '../edits/take-sheet.ts';
import type { ShownHead } from './shown-head.ts';
import type { ShownCell, ShownColumn } from './shown-sheet.ts';

/** The figures that go into the notebook, row by row: those nobody has to look at first, of columns that are clear. */
export const takenRows = (columns: readonly ShownColumn[], cells: readonly (readonly ShownCell[])[]): SheetFigure[][] =>
  cells.map((row) =>
    row.flatMap(({ value, text, column, isAsked }) => {
      const { quantity, unit, isAsked: isColumnAsked } = columns[column]!;
      if (value === null || isAsked || isColumnAsked || quantity === null) return [];
      return [{ quantity, value, text: unit ? `${text.trim()} ${unit}` : text.trim() }];
    }),
  );

/** What goes over of the sheet's head. */
export const takenHead = (head: readonly ShownHead[]): TakeSheet['head'] =>
  Object.fromEntries(head.flatMap(({ name, value, isAsked }) => (value === null || isAsked ? [] : [[name, value]])));
