import { fail, ok, type Issue, type Result } from '../issues/result.ts';
import type { Photo } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { readWriting } from '../writing/index.ts';
import { readPlate } from './read-plate.ts';
import type { PlateReading } from './reading.ts';

/** What is being done, for whoever waits. */
export type PlateStep = 'writing' | 'meaning';
export type PlateAids = { readonly onStep: (step: PlateStep) => void };

/**
 * Reads a nameplate in a photo.
 * @param words reads crops of text
 * @returns an issue where the photo shows no plate, or one on which nothing can be read
 */
export async function readPlateIn(
  photo: Photo,
  words: WordReader,
  { onStep }: PlateAids,
): Promise<Result<PlateReading>> {
  onStep('writing');
  const writing = await readWriting(photo, words);
  if (!writing) return fail([NO_PLATE]);
  onStep('meaning');
  const reading = readPlate(writing);
  return Object.keys(reading.fields).length > 0 ? ok(reading) : fail([NO_PLATE]);
}

const NO_PLATE: Issue = {
  code: 'contradiction',
  path: '',
  message:
    'No plate with values that can be read was found on this photo. Take it again straight on, nearer, and without glare.',
};
