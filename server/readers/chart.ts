import { createMemory, readChartIn, type ChartHints, type ChartReading, type Memory } from '../../src/chart/index.ts';
import type { Result } from '../../src/issues/result.ts';
import type { Photo } from '../../src/picture/raster.ts';
import type { ReadingAids } from './kinds.ts';

/** What was worked out for each recent photo: the next correction on it starts from there. */
const memories = new WeakMap<Photo, Memory>();
/** Enough for a few frames with their labels, and the chart laid flat for the last few corrections. */
const KEPT = 24;

/** The chart in a photo, with whatever was told about it and whatever is remembered of this photo. */
export function readChart(photo: Photo, hints: ChartHints, aids: ReadingAids): Promise<Result<ChartReading>> {
  const memory = memories.get(photo) ?? createMemory(KEPT);
  memories.set(photo, memory);
  return readChartIn(photo, hints, { ...aids, memory });
}
