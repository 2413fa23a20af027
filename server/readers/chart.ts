/**
 * Photo file and hints → chart reading.
 *
 * `readChart` answers a `Result`: the reading, or issues for hints that can't be or taps with no line under them
 * (`not-understood` is a 400, everything else a 422, as for jobs). It throws `NotYet` where corners, axes or seeds are
 * missing: reading those without being told is not built yet, and the route answers 501 with the error's message.
 * A file that can't be decoded throws what sharp throws.
 */
import { areFull, readHintedChart, type ChartHints, type ChartReading } from '../../src/chart/index.ts';
import type { Result } from '../../src/issues/result.ts';
import { recentPhoto } from '../image/recent-photos.ts';

/** Asked for something that is planned and not built; the route answers 501. */
export class NotYet extends Error {
  override readonly name = 'NotYet';
}

/** @param photoFilePath the stored photo, tagged or upright; @param hints already checked by the `ChartHints` schema */
export async function readChart(photoFilePath: string, hints: ChartHints): Promise<Result<ChartReading>> {
  if (!areFull(hints))
    throw new NotYet(
      'Please mark the four corners of the plot, type both ends of its scales and tap each curve: finding them without help is still to come.',
    );
  return readHintedChart(await recentPhoto(photoFilePath), hints);
}
