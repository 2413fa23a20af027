import type { WordReader } from '../words/word-reader.ts';
import { exactFrame, snapFrame } from './frame-snap.ts';
import type { AxisHint, ChartHints } from './hints.ts';
import type { FoundAxis } from './labels/name-axes.ts';
import { readLabels, type Labels } from './labels/read-labels.ts';
import type { Memory } from './memory.ts';
import { findFrames } from './page/find-frames.ts';
import { isAlike } from './page/web-frames.ts';
import type { Photo } from './raster.ts';
import { photoPoint, type Corners } from './spaces.ts';

/** A chart on the photo: its frame the right way up, its scales, and the words in and around it. */
export type FoundChart = {
  readonly labels: Labels;
  /** its own axes, and the flow axis of the panel it is stacked with where it has none */
  readonly axes: readonly FoundAxis[];
  /** how sure it is that this frame holds a plot, 0..1; 1 where it was told */
  readonly confidence: number;
  /** what is printed around the panels stacked with it over one flow axis */
  readonly panels: readonly Labels[];
};

/** What helps in finding a chart. */
export type Aids = { readonly words: WordReader; readonly memory: Memory; readonly onStep: (step: ChartStep) => void };
export type ChartStep = 'frame' | 'labels' | 'curves';

/** Frames looked into before a photo is given up: on a page of several charts the first with scales is taken. */
const MOST_FRAMES = 4;
/** Another frame on the page is offered from here on. */
const LIKELY_PLOT = 0.5;

type Frame = { corners: Corners; confidence: number; panels?: readonly Corners[] };

/**
 * The chart on a photo: in the told frame, or in the likeliest of all frames that has a flow and a pressure axis, or may
 * share the flow axis of a panel stacked with it.
 * @returns the chart with the most axes where none has both, null where nothing looks like a plot; and the other frames
 */
export async function findChart(
  photo: Photo,
  hints: ChartHints,
  { words, memory, onStep }: Aids,
): Promise<{ chart: FoundChart | null; others: Corners[] }> {
  onStep('frame');
  const corners = hints.frameCorners_px?.map(([x, y]) => photoPoint(x, y)) as Corners | undefined;
  const frames: readonly Frame[] = corners
    ? [{ corners, confidence: 1 }]
    : memory('frames', () => findFrames(photo)).slice(0, MOST_FRAMES);
  const isExact = Boolean(corners && hints.exact);
  const told = hints.axes ?? [];
  const labelsIn = (at: Corners): Promise<Labels | null> => {
    const frame = memory(`frame ${isExact} ${at}`, () => (isExact ? exactFrame : snapFrame)(photo, at));
    const asked = { isUpright: Boolean(corners), axes: !isWhole([], told) };
    return memory(`labels ${JSON.stringify(asked)} ${frame.corners}`, () => readLabels(photo, frame, words, asked));
  };

  onStep('labels');
  const charts: FoundChart[] = [];
  for (const frame of frames) {
    const labels = await labelsIn(frame.corners);
    if (!labels) continue;
    const panels: Labels[] = [];
    for (const panel of frame.panels ?? []) {
      const beside = await labelsIn(panel);
      if (beside?.turns === labels.turns) panels.push(beside);
    }
    charts.push({
      labels,
      axes: [...sharedFlow(labels, panels), ...labels.axes],
      confidence: frame.confidence,
      panels,
    });
    if (isWhole(charts.at(-1)!.axes, told)) break;
  }
  const worth = ({ axes }: FoundChart): number => (isWhole(axes, told) ? 100 : 0) + axes.length;
  const best = charts.reduce<FoundChart | null>((a, b) => (a && worth(a) >= worth(b) ? a : b), null);
  const taken = best ? [best.labels, ...best.panels].map(({ frame }) => frame) : [];
  const others = frames.filter((f) => f.confidence > LIKELY_PLOT && !taken.some((frame) => isAlike(frame, f)));
  return { chart: best, others: others.map((f) => f.corners) };
}

/** The flow axis printed under another panel, where this one has none of its own. */
function sharedFlow(labels: Labels, panels: readonly Labels[]): FoundAxis[] {
  if (labels.axes.some(isFlow)) return [];
  return panels.flatMap(({ axes }) => axes.filter(isFlow)).slice(0, 1);
}

const isFlow = ({ quantity }: { quantity: string }): boolean => quantity === 'flow';

/** Whether there is a flow axis and a pressure to read against it: a panel of power alone is no fan chart yet. */
function isWhole(found: readonly FoundAxis[], told: readonly AxisHint[] = []): boolean {
  const all = [...found, ...told];
  return all.some(isFlow) && all.some((a) => a.quantity.endsWith('_pressure'));
}
