import type { WordRead, WordReader } from '../../words/word-reader.ts';
import type { DigitReader } from '../digits/digit-network.ts';
import type { Blot } from '../ink/blots.ts';
import type { SheetInk } from '../ink/sheet-ink.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { askWords } from './ask-words.ts';
import { blotsByCell, digitHeight, type CellBlots } from './cell-blots.ts';
import { cellContent, type CellContent } from './cell-content.ts';
import { cellCrop, type CropWay } from './cell-crop.ts';
import { hasFragments } from './fragments.ts';
import { readNumber, type Spelling } from './read-number.ts';
import { leavingOpen, UNSETTLED, type Settled } from './reading-habits.ts';

/** One cell: what it holds, and what its number may be, likeliest first; none where it holds no number. */
export type ReadCell = CellBlots & {
  readonly content: CellContent;
  readonly heard: HeardNumber;
  readonly spellings: readonly Spelling[];
};

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
  const heard = await hearNumbers(numbers, field, digits, words);
  const read = new Map(
    cells.map(({ cell, content }, i) => {
      const spellings = spelt(heard[i]!, field, digits);
      const { blots } = numbers[i]!;
      // what only the reader of words makes something of has no second witness
      const isUnread = blots.length > 0 && !heard[i]!.own.length;
      const isStained = cell.isStained || isUnread || hasFragments(blots, digit);
      return [cell, { ...cell, isStained, content, heard: heard[i]!, spellings }] as const;
    }),
  );
  return body.map((row) => row.map((cell) => read.get(cell)!));
}

/** A number somewhere on the sheet: its ink from left to right, and how high its digits usually are. */
export type WrittenNumber = { readonly blots: readonly Blot[]; readonly digit: number };

/** A number as either reader read it by itself: spellings of its digits, and words once or twice; not asked where there is no ink. */
export type HeardNumber = WrittenNumber & { readonly own: readonly Spelling[]; readonly reads: readonly WordRead[] };

/** Has numbers read by both readers, those that stay unclear twice by that of words. */
export async function hearNumbers(
  numbers: readonly WrittenNumber[],
  field: SheetInk['field'],
  digits: DigitReader,
  words: WordReader,
): Promise<HeardNumber[]> {
  const full = numbers.filter(({ blots }) => blots.length > 0);
  const ask = (some: readonly WrittenNumber[], way: CropWay) =>
    words(
      some.map(({ blots, digit }) => cellCrop(blots, field, digit, way)),
      'number',
    );
  const own = new Map(full.map((number) => [number, readNumber(number.blots, field, number.digit, digits)]));
  const first = await ask(full, FIRST);
  const reads = new Map(full.map((number, k): [WrittenNumber, WordRead[]] => [number, [first[k]!]]));
  const doubtful = full.filter((number) => !isClear(askWords(own.get(number)!, reads.get(number)!)));
  const second = await ask(doubtful, AGAIN);
  doubtful.forEach((number, k) => reads.get(number)!.push(second[k]!));
  return numbers.map((number) => ({ ...number, own: own.get(number) ?? [], reads: reads.get(number) ?? [] }));
}

/** The spellings of a number as both readers make them, their habits settled, likeliest first; none where there is no digit. */
export function spelt(
  { blots, digit, own, reads }: HeardNumber,
  field: SheetInk['field'],
  digits: DigitReader,
  { deaf, open }: Settled = UNSETTLED,
): Spelling[] {
  const isOpen = open.some((habit) => own.some(({ text }) => text.includes(habit.digits)));
  const spellings = isOpen ? readNumber(blots, field, digit, leavingOpen(digits, open)) : [...own];
  return reads.length ? askWords(spellings, reads, deaf) : spellings;
}

const isClear = ([best, next]: readonly Spelling[]): boolean =>
  !next || best!.logLikelihood - next.logLikelihood > CLEAR;
