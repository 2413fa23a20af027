import type { WordReader } from '../../words/word-reader.ts';
import type { DigitReader } from '../digits/digit-network.ts';
import type { Blot } from '../ink/blots.ts';
import type { SheetInk } from '../ink/sheet-ink.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { askWords } from './ask-words.ts';
import { blotsByCell, digitHeight, type CellBlots } from './cell-blots.ts';
import { cellContent, type CellContent } from './cell-content.ts';
import { cellCrop, type CropWay } from './cell-crop.ts';
import { readNumber, type Spelling } from './read-number.ts';

/** One cell: what it holds, and what its number may be, likeliest first; none where it holds no number. */
export type ReadCell = CellBlots & { readonly content: CellContent; readonly spellings: readonly Spelling[] };

/** Two looks for the second witness. */
const WAYS: readonly CropWay[] = [
  { soft: 0, isAlone: true },
  { soft: 0.05, isAlone: false },
];

/** Reads every cell of the table below its header with both readers. @returns cells[row][column] */
export async function readCells(
  table: TableSurface,
  firstRow: number,
  { field, blots }: SheetInk,
  digits: DigitReader,
  words: WordReader,
): Promise<ReadCell[][]> {
  const body = blotsByCell(blots, table).slice(firstRow);
  const digit = digitHeight(body.flat(), table.rowHeight);
  const cells = body.flat().map((cell) => ({ cell, content: cellContent(cell.blots, field, digit, digits) }));
  const numbers = cells.map(({ content }) => ({ blots: content.kind === 'number' ? content.blots : [], digit }));
  const spellings = await readNumbers(numbers, field, digits, words);
  const read = new Map(
    cells.map(({ cell, content }, i) => [cell, { ...cell, content, spellings: spellings[i]! }] as const),
  );
  return body.map((row) => row.map((cell) => read.get(cell)!));
}

/** A number somewhere on the sheet: its ink from left to right, and how high its digits usually are. */
export type WrittenNumber = { readonly blots: readonly Blot[]; readonly digit: number };

/** Reads numbers with both readers. @returns the spellings of each, likeliest first; none where there is no digit */
export async function readNumbers(
  numbers: readonly WrittenNumber[],
  field: SheetInk['field'],
  digits: DigitReader,
  words: WordReader,
): Promise<Spelling[][]> {
  const own = numbers.map(({ blots, digit }) => readNumber(blots, field, digit, digits));
  const full = [...numbers.keys()].filter((i) => own[i]!.length > 0);
  const crops = full.flatMap((i) => WAYS.map((way) => cellCrop(numbers[i]!.blots, field, numbers[i]!.digit, way)));
  const said = await words(crops, 'number');
  full.forEach((i, k) => (own[i] = askWords(own[i]!, said.slice(k * WAYS.length, (k + 1) * WAYS.length))));
  return own;
}
