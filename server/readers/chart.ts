/**
 * Photo file and hints → chart reading.
 *
 * `readChart` answers a `Result`: the reading, or issues for hints that can't be, for a photo without a chart, or for
 * taps with no line under them (`not-understood` is a 400, everything else a 422, as for jobs).
 * A file that can't be decoded throws what sharp throws.
 */
import {
  createMemory,
  readChartIn,
  type ChartHints,
  type ChartReading,
  type ChartStep,
  type Memory,
  type Photo,
} from '../../src/chart/index.ts';
import type { Result } from '../../src/issues/result.ts';
import type { WordReader } from '../../src/words/word-reader.ts';
import { recentPhoto } from '../image/recent-photos.ts';

/** What was worked out for each recent photo: the next correction on it starts from there. */
const memories = new WeakMap<Photo, Memory>();
/** Enough for a few frames with their labels, and the chart laid flat for the last few corrections. */
const KEPT = 24;

export type ReadingOptions = { onStep?: (step: ChartStep) => void; stop?: AbortSignal };

/**
 * @param photoFilePath the stored photo, tagged or upright; @param hints already checked by the `ChartHints` schema
 * @throws the signal's reason when `stop` is given in the middle
 */
export async function readChart(
  photoFilePath: string,
  hints: ChartHints,
  words: WordReader,
  { onStep, stop }: ReadingOptions = {},
): Promise<Result<ChartReading>> {
  const photo = await recentPhoto(photoFilePath);
  const memory = memories.get(photo) ?? createMemory(KEPT);
  memories.set(photo, memory);
  return readChartIn(photo, hints, {
    memory,
    words: (crops, want) => {
      stop?.throwIfAborted();
      return words(crops, want);
    },
    onStep: (step) => {
      stop?.throwIfAborted();
      onStep?.(step);
    },
  });
}
