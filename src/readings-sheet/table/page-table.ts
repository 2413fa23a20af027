import type { Photo } from '../../picture/raster.ts';
import type { WordReader } from '../../words/word-reader.ts';
import { layFlat, readBoxes, type ReadWord } from '../../writing/index.ts';
import { findOutline, wholePhoto } from '../../writing/outline/find-outline.ts';
import { turnUpright } from '../../writing/upright.ts';
import { surenessOf } from '../heads/header.ts';
import { nameColumns } from '../heads/name-columns.ts';
import { asLines, type SheetLine } from '../heads/sheet-words.ts';
import type { TableSurface } from './table-surface.ts';

/** A table without rulings to go by: where its header and its readings stand on the sheet laid flat. */
export type PageTable = { readonly table: TableSurface; readonly lines: readonly SheetLine[] };

const MOST_LINES = 60;
/** Words further apart than this, capital heights, stand over different columns. */
const CELL_GAP = 1.1;
const LEAST_COLUMNS = 2;

/** Finds a table by the words over its columns alone; null where no row of words names some. */
export async function pageTable(photo: Photo, words: WordReader): Promise<PageTable | null> {
  const lying = layFlat(photo, findOutline(photo) ?? wholePhoto(photo));
  if (!lying) return null;
  const { surface, found } = await turnUpright(lying, words);
  const boxes = found.lines.filter(({ isLight }) => !isLight).slice(0, MOST_LINES);
  const lines = asLines(await readBoxes(surface, boxes, words));
  const header = headerRow(lines.flatMap((line) => line.words));
  if (!header) return null;
  const { top, foot, capital } = header;
  const right = surface.width - 0.5 * capital;
  return {
    lines,
    table: {
      surface,
      xs: [0.5 * capital, right],
      ys: [top - 0.5 * capital, foot + 0.5 * capital, surface.height - 0.5 * capital],
      drawn: { xs: [], ys: [] },
      rowHeight: 2 * capital,
    },
  };
}

type Row = { readonly words: readonly ReadWord[]; readonly y: number; readonly capital: number };

/** The row of words, or two under each other, that names most columns. */
function headerRow(words: readonly ReadWord[]): { top: number; foot: number; capital: number } | null {
  const rows = rowsOf(words);
  let best: { top: number; foot: number; capital: number; worth: number } | null = null;
  rows.forEach((row, i) => {
    const below = rows[i + 1];
    const both = below && below.y - row.y < 2.6 * row.capital ? [row, below] : [row];
    for (const some of both.length > 1 ? [[row], both] : [[row]]) {
      const cells = cellsOf(some);
      if (cells.length < LEAST_COLUMNS) continue;
      const columns = nameColumns(cells);
      const worth = surenessOf(columns) * columns.filter(({ quantity }) => quantity).length;
      const all = some.flatMap((r) => r.words);
      if (columns.filter(({ quantity }) => quantity).length >= LEAST_COLUMNS && worth > (best?.worth ?? 0))
        best = {
          top: Math.min(...all.map((w) => w.y0)),
          foot: Math.max(...all.map((w) => w.y1)),
          capital: row.capital,
          worth,
        };
    }
  });
  return best;
}

function rowsOf(words: readonly ReadWord[]): Row[] {
  const rows: ReadWord[][] = [];
  const middle = (w: ReadWord) => (w.y0 + w.y1) / 2;
  for (const word of words.toSorted((a, b) => middle(a) - middle(b))) {
    const last = rows.at(-1);
    if (last && Math.abs(middle(last[0]!) - middle(word)) < 0.6 * word.capitalHeight) last.push(word);
    else rows.push([word]);
  }
  return rows.map((row) => ({
    words: row.sort((a, b) => a.x0 - b.x0),
    y: row.reduce((s, w) => s + middle(w), 0) / row.length,
    capital: row.map((w) => w.capitalHeight).sort((a, b) => a - b)[row.length >> 1]!,
  }));
}

/** Texts over each column: words of the first row parted by wide gaps, and what stands under each. */
function cellsOf([first, second]: readonly Row[]): string[][] {
  const cells: { x0: number; x1: number; texts: string[] }[] = [];
  for (const { x0, x1, text } of first!.words) {
    const last = cells.at(-1);
    if (last && x0 - last.x1 < CELL_GAP * first!.capital) {
      last.x1 = x1;
      last.texts[0] += ` ${text}`;
    } else cells.push({ x0, x1, texts: [text] });
  }
  for (const { x0, x1, text } of second?.words ?? []) {
    const middle = (x0 + x1) / 2;
    const over = cells.toSorted((a, b) => away(a, middle) - away(b, middle))[0];
    over?.texts.splice(1, 1, [over.texts[1], text].filter(Boolean).join(' '));
  }
  return cells.map(({ texts }) => texts);
}

const away = ({ x0, x1 }: { x0: number; x1: number }, x: number): number => Math.max(0, x0 - x, x - x1);
