import type { Said } from '../plate/plate-work.ts';
import type { HeadQuantity } from '../sheet/sheet-reading.ts';
import { cellKey, type SaidColumn, type SheetWork } from '../sheet/sheet-work.ts';
import type { Doc } from '../state/doc.ts';

type Change = (work: SheetWork) => SheetWork;

/** Changes the work on one sheet; nothing else of the document. */
export function changeSheet(doc: Doc, photoId: string, change: Change): Doc {
  const work = doc.sheets?.[photoId];
  return work ? { ...doc, sheets: { ...doc.sheets, [photoId]: change(work) } } : doc;
}

/** Says what stands in a cell, or that it was read right; null takes back what was said. */
export const sayCell =
  (row: number, column: number, said: Said | null): Change =>
  (work) => {
    const cells = { ...work.cells };
    if (said) cells[cellKey(row, column)] = said;
    else delete cells[cellKey(row, column)];
    return { ...work, cells };
  };

/** Says that every figure of a column was read right; what was typed stays. */
export const sayWholeColumn =
  (column: number): Change =>
  (work) => {
    const keys = (work.reading?.rows ?? []).map((_, row) => cellKey(row, column));
    const cells = Object.fromEntries(keys.map((key) => [key, { ...work.cells[key], seen: true as const }]));
    return { ...work, cells: { ...work.cells, ...cells } };
  };

export const sayColumn =
  (column: number, said: SaidColumn): Change =>
  (work) => ({ ...work, columns: { ...work.columns, [column]: { ...work.columns[column], ...said } } });

export const sayHead =
  (name: HeadQuantity, said: Said): Change =>
  (work) => ({ ...work, head: { ...work.head, [name]: said } });
