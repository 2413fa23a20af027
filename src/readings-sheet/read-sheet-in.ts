import { fail, ok, type Issue, type Result } from '../issues/result.ts';
import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { createDigitReader } from './digits/digit-network.ts';
import { DIGIT_WEIGHTS } from './digits/digit-weights.ts';
import { findTable } from './find-table.ts';
import { readTable } from './read-table.ts';
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
  return ok(await readTable(found, readDigit, words, () => onStep('meaning')));
}

const NO_TABLE: Issue = {
  code: 'contradiction',
  path: '',
  message:
    'No table of readings was found on this photo. Take it again straight on, so that the whole table is in the picture and in even light.',
};
