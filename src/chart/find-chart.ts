import type { WordReader } from '../words/word-reader.ts';
import { exactFrame, snapFrame, type SnappedFrame } from './frame-snap.ts';
import type { AxisHint, ChartHints } from './hints.ts';
import type { FoundAxis } from './labels/name-axes.ts';
import { readLabels, type Labels } from './labels/read-labels.ts';
import type { Memory } from './memory.ts';
import { findFrames } from './page/find-frames.ts';
import type { Photo } from './raster.ts';
import { photoPoint, type Corners } from './spaces.ts';

/** A chart on the photo: its frame the right way up, its scales, and the words in and around it. */
export type FoundChart = {
  readonly labels: Labels;
  /** how sure it is that this frame holds a plot, 0..1; 1 where it was told */
  readonly confidence: number;
};

/** What helps in finding a chart. */
export type Aids = { readonly words: WordReader; readonly memory: Memory; readonly onStep: (step: ChartStep) => void };
export type ChartStep = 'frame' | 'labels' | 'curves';

/** Frames looked into before a photo is given up: on a page of several charts the first with scales is taken. */
const MOST_FRAMES = 4;
/** Another frame on the page is offered from here on. */
const LIKELY_PLOT = 0.5;

/**
 * The charts on a photo, likeliest first: the told frame, or every frame found, with what is printed around it. The
 * first one that has a flow and a pressure axis ends the search.
 * @returns the charts looked at, the best first, and the frames that were not
 */
export async function findCharts(
  photo: Photo,
  hints: ChartHints,
  { words, memory, onStep }: Aids,
): Promise<{ charts: FoundChart[]; others: Corners[] }> {
  onStep('frame');
  const told = hints.frameCorners_px?.map(([x, y]) => photoPoint(x, y)) as Corners | undefined;
  const frames = told
    ? [{ corners: told, confidence: 1 }]
    : memory('frames', () => findFrames(photo)).slice(0, MOST_FRAMES);
  const charts: FoundChart[] = [];
  const others: Corners[] = [];
  onStep('labels');
  for (const { corners, confidence } of frames) {
    if (charts.some(({ labels }) => isWhole(labels.axes, hints.axes))) {
      if (confidence > LIKELY_PLOT) others.push(corners);
      continue;
    }
    const isExact = Boolean(told && hints.exact);
    const frame = memory(`frame ${isExact} ${corners}`, () => (isExact ? exactFrame : snapFrame)(photo, corners));
    const labels = await labelsOf(photo, frame, Boolean(told), hints.axes ?? [], words, memory);
    if (labels) charts.push({ labels, confidence });
  }
  const worth = ({ labels }: FoundChart): number => (isWhole(labels.axes, hints.axes) ? 100 : 0) + labels.axes.length;
  charts.sort((a, b) => worth(b) - worth(a));
  return { charts, others };
}

async function labelsOf(
  photo: Photo,
  frame: SnappedFrame,
  isUpright: boolean,
  told: readonly AxisHint[],
  words: WordReader,
  memory: Memory,
): Promise<Labels | null> {
  const axes = !isWhole([], told);
  return memory(`labels ${isUpright} ${axes} ${frame.corners}`, () =>
    readLabels(photo, frame, words, { isUpright, axes }),
  );
}

/** Whether there is a flow axis and a pressure to read against it: a panel of power alone is no fan chart yet. */
function isWhole(found: readonly FoundAxis[], told: readonly AxisHint[] = []): boolean {
  const all = [...found, ...told];
  return all.some((a) => a.quantity === 'flow') && all.some((a) => a.quantity.endsWith('_pressure'));
}
