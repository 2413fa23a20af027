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

/** The second witness looks once, and again where the two do not agree well. */
const FIRST: CropWay = { soft: 0, isAlone: true };
const AGAIN: CropWay = { soft: 0.05, isAlone: false };
/** So much likelier than the next spelling is agreement. */
const CLEAR = 5;

/** Reads every cell of the table below its header with both readers. @returns cells[row][column] */
export async function readCells(
  table: TableSurface,
  { field, blots }: SheetInk,
  digits: DigitReader,
  words: WordReader,
): Promise<ReadCell[][]> {
  const body = blotsByCell(blots, table, field.width).slice(1);
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
  const full = [...numbers.keys()].filter((i) => numbers[i]!.blots.length > 0);
  const ask = (some: readonly number[], way: CropWay) =>
    words(
      some.map((i) => cellCrop(numbers[i]!.blots, field, numbers[i]!.digit, way)),
      'number',
    );
  const first = await ask(full, FIRST);
  const heard = own.map((spellings) => spellings);
  full.forEach((i, k) => (heard[i] = askWords(own[i]!, [first[k]!])));
  const doubtful = [...full.keys()].filter((k) => !isClear(heard[full[k]!]!));
  const second = await ask(
    doubtful.map((k) => full[k]!),
    AGAIN,
  );
  doubtful.forEach((k, n) => (heard[full[k]!] = askWords(own[full[k]!]!, [first[k]!, second[n]!])));
  return heard;
}

const isClear = ([best, next]: readonly Spelling[]): boolean =>
  !next || best!.logLikelihood - next.logLikelihood > CLEAR;
