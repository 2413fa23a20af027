import { fail, ok, type Issue, type Result } from '../issues/result.ts';
import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { readCells } from './cells/read-cells.ts';
import { guessColumns } from './columns/guess-columns.ts';
import { asPossible } from './columns/possible-size.ts';
import { repeated } from './columns/repeated.ts';
import { withUnit } from './columns/unit-by-size.ts';
import { weighColumn } from './columns/weigh-column.ts';
import { mayBeOf } from './columns/what-it-may-be.ts';
import { createDigitReader } from './digits/digit-network.ts';
import { DIGIT_WEIGHTS } from './digits/digit-weights.ts';
import { findTable } from './find-table.ts';
import { nameColumns } from './heads/name-columns.ts';
import { readHead } from './heads/read-head.ts';
import { putTogether } from './put-together.ts';
import type { SheetReading } from './reading.ts';

/** What is being done, for whoever waits. */
export type SheetStep = 'table' | 'cells' | 'meaning';
export type SheetAids = { readonly onStep: (step: SheetStep) => void };

const readDigit = createDigitReader(DIGIT_WEIGHTS);

/**
 * Reads a sheet of test readings in a photo: the head, what the columns are, and every cell.
 * @param words reads crops of text
 * @returns an issue where no table is found on the photo
 */
export async function readSheetIn(
  photo: Photo,
  words: WordReader,
  { onStep }: SheetAids,
): Promise<Result<SheetReading>> {
  onStep('table');
  const found = await findTable(photo, readDigit, words);
  if (!found) return fail([NO_TABLE]);
  onStep('cells');
  const { ink } = found;
  const cells = await readCells(found.table, ink, readDigit, words);
  const fields = await readHead(found.table, found.lines, ink, readDigit, words);
  onStep('meaning');
  const spellings = found.columns.map((_, c) => cells.map((row) => row[c]!.spellings));
  const mayBe = spellings.map(mayBeOf);
  const names = nameColumns(found.headings, (quantity, c) => mayBe[c]!(quantity));
  const columns = names.map(({ quantity }, c) =>
    repeated(
      weighColumn(spellings[c]!, quantity === 'opening'),
      cells.map((row) => row[c]!.content),
    ),
  );
  const named = guessColumns(
    names.map((column, c) => asPossible(withUnit(column, columns[c]!), columns[c]!)),
    columns,
  );
  return ok(putTogether({ ...found, columns: named }, fields, cells, columns));
}

const NO_TABLE: Issue = {
  code: 'contradiction',
  path: '',
  message:
    'No table of readings was found on this photo. Take it again straight on, so that the whole table is in the picture and in even light.',
};
