/**
 * Photo file and hints → chart reading.
 *
 * `readChart` answers a `Result`: the reading, or issues for hints that can't be or taps with no line under them
 * (`not-understood` is a 400, everything else a 422, as for jobs). It throws `NotYet` where corners, axes or seeds are
 * missing: reading those without being told is not built yet, and the route answers 501 with the error's message.
 * A file that can't be decoded throws what sharp throws.
 */
import {
  areFull,
  layChartFlat,
  readTaps,
  type ChartHints,
  type ChartReading,
  type FullHints,
  type Photo,
  type StraightenedChart,
} from '../../src/chart/index.ts';
import type { Result } from '../../src/issues/result.ts';
import { recentPhoto } from '../image/recent-photos.ts';

/** Asked for something that is planned and not built; the route answers 501. */
export class NotYet extends Error {
  override readonly name = 'NotYet';
}

const TELL_ALL =
  'Please mark the four corners of the plot, type both ends of its scales and tap each curve: finding them without help is still to come.';

/** @param photoFilePath the stored photo, tagged or upright; @param hints already checked by the `ChartHints` schema */
export async function readChart(photoFilePath: string, hints: ChartHints): Promise<Result<ChartReading>> {
  if (!areFull(hints)) throw new NotYet(TELL_ALL);
  const photo = await recentPhoto(photoFilePath);
  const chart = flatChart(photo, hints);
  return chart.ok ? readTaps(photo, chart.value, hints) : chart;
}

/** The chart last laid flat from each recent photo: the next tap on it needs no new straightening. */
const lastFlat = new WeakMap<Photo, { key: string; chart: StraightenedChart }>();

function flatChart(photo: Photo, hints: FullHints): Result<StraightenedChart> {
  const key = JSON.stringify([hints.frameCorners_px, hints.axes, hints.exact]);
  const last = lastFlat.get(photo);
  if (last?.key === key) return { ok: true, value: last.chart, warnings: [] };
  const chart = layChartFlat(photo, hints);
  if (chart.ok) lastFlat.set(photo, { key, chart: chart.value });
  return chart;
}
