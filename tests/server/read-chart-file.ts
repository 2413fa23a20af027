import { recentPhoto } from '../../server/image/recent-photos.ts';
import { readChart } from '../../server/readers/chart.ts';
import type { ChartHints } from '../../src/chart/index.ts';
import type { WordReader } from '../../src/words/word-reader.ts';

/** The chart in a photo's file, as the server reads it. */
export const readChartFile = async (file: string, hints: ChartHints, words: WordReader) =>
  readChart(await recentPhoto(file), hints, { words, onStep: () => undefined });
