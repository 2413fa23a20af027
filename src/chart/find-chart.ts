import type { WordReader } from '../words/word-reader.ts';
import { FINGER_REACH_PX } from './frame/find-sides.ts';
import { exactFrame, snapFrame } from './frame/frame-snap.ts';
import type { AxisHint, ChartHints } from './hints.ts';
import type { FoundAxis } from './labels/name-axes.ts';
import { framesApart, frameToNumbers } from './labels/frames-by-numbers.ts';
import { readLabels, type Labels, type Scales } from './labels/read-labels.ts';
import type { Memory } from './memory.ts';
import type { Turns } from './labels/turned.ts';
import { findFrames } from './page/find-frames.ts';
import { areStacked, mayShareFlow } from './page/stacked-panels.ts';
import { overlap } from './page/web-frames.ts';
import type { Photo } from '../picture/raster.ts';
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

/** The same before the words in it are read. */
type Looked = Omit<FoundChart, 'labels' | 'panels'> & { readonly labels: Scales; readonly panels: readonly Scales[] };

/** @param isOneOfSeveral another plot on the photo has a flow and a pressure axis too, and nobody said which is meant */
export type FoundCharts = {
  readonly chart: FoundChart | null;
  readonly others: readonly Corners[];
  readonly isOneOfSeveral: boolean;
};

/** What helps in finding a chart. */
export type Aids = { readonly words: WordReader; readonly memory: Memory; readonly onStep: (step: ChartStep) => void };
export type ChartStep = 'frame' | 'labels' | 'curves';

/** Frames looked into before a photo is given up: on a page of several charts the first with scales is taken. */
const MOST_FRAMES = 4;
/** Frames less likely than this are not looked into. */
const UNLIKELY = 0.05;
/** A photo on which so many words were read and no chart was found has none: a wall, a page of text. */
const MOST_CROPS = 160;
/** After so many no further frame is looked into: grain reads as nothing, and takes as long. */
const MOST_CROPS_IN_ALL = 500;
/** So many were read, and there is a chart: others on the photo are not looked for. */
const ENOUGH_CROPS = 200;
/** Another frame on the page is offered from here on. */
const LIKELY_PLOT = 0.75;
const APART = 0.2;

/** A frame of printed lines was found to within a few pixels; what a finger or the ends of a grid tell may be further off. */
const REACH_PX = { boxed: 14, grid: FINGER_REACH_PX, open: FINGER_REACH_PX, told: FINGER_REACH_PX };

type Frame = {
  corners: Corners;
  confidence: number;
  kind: keyof typeof REACH_PX;
  /** how the text stands by it, where that is known */
  turns?: Turns;
  panels?: readonly Corners[];
};

/**
 * The chart on a photo: in the told frame, or in the likeliest of all frames whose flow and pressure axes, its own or
 * shared with a panel, are read for sure; else in the one where they are read most surely.
 * @returns null where nothing looks like a plot; and the other frames, likeliest first
 */
export async function findChart(
  photo: Photo,
  hints: ChartHints,
  { words, memory, onStep }: Aids,
): Promise<FoundCharts> {
  onStep('frame');
  const corners = hints.frameCorners_px?.map(([x, y]) => photoPoint(x, y)) as Corners | undefined;
  const seen: readonly Frame[] = memory('frames', () => findFrames(photo));
  const frames: readonly Frame[] = corners
    ? [{ corners, confidence: 1, kind: 'told', panels: stackedWith(corners, seen) }]
    : seen.filter(({ confidence }) => confidence > UNLIKELY).slice(0, MOST_FRAMES);
  let crops = 0;
  const read: WordReader = (some, want) => {
    crops += some.length;
    return words(some, want);
  };
  const isTold = corners !== undefined;
  const isExact = isTold && hints.exact === true;
  const told = hints.axes ?? [];
  const labelsIn = (at: Corners, kind: Frame['kind'], known: Turns | null): Promise<Scales | null> => {
    const frame = memory(`frame ${isExact} ${at}`, () =>
      isExact ? exactFrame(photo, at) : snapFrame(photo, at, REACH_PX[kind]),
    );
    return memory(`labels ${isTold} ${frame.corners}`, () => readLabels(photo, frame, read, isTold, known));
  };

  /** how the text stands on this photo, once a frame was read surely */
  let standing: Turns | null = null;
  const chartIn = async (frame: Frame): Promise<Looked | null> => {
    const known = frame.turns ?? standing;
    const labels = await labelsIn(frame.corners, frame.kind, known);
    if (!labels) return null;
    const panels: Scales[] = [];
    for (const panel of frame.panels ?? []) {
      const beside = await labelsIn(panel, 'boxed', known);
      if (beside?.turns === labels.turns && mayShareFlow(labels.axes, beside.axes)) panels.push(beside);
    }
    return { labels, axes: [...sharedFlow(labels, panels), ...labels.axes], confidence: frame.confidence, panels };
  };

  onStep('labels');
  const charts: Looked[] = [];
  const look = async (frame: Frame): Promise<void> => {
    const chart = await chartIn(frame);
    if (!chart) return;
    charts.push(chart);
    if (sureness(chart, told) > SURELY_STANDING) standing ??= chart.labels.turns;
  };
  const bestOf = (some: readonly Looked[]): Looked | null =>
    some.reduce<Looked | null>((a, b) => (a && worthOf(a, told) >= worthOf(b, told) - CLEARLY ? a : b), null);
  for (const [k, frame] of frames.entries()) {
    if (crops > MOST_CROPS_IN_ALL || (crops > MOST_CROPS && !charts.some(({ axes }) => axes.length))) break;
    const first = charts.length;
    await look(frame);
    const printed = charts[first];
    // a frame moved to its numbers shows more of them
    for (let moved = isTold ? null : printed, k = 0; moved && moved === bestOf(charts) && k < MOST_MOVES; k++) {
      const before = charts.length;
      for (const other of byNumbers(moved)) await look(other);
      moved = bestOf(charts.slice(before));
    }
    const now = bestOf(charts.slice(first));
    if (!now) continue;
    const next = frames[k + 1]?.confidence ?? 0;
    const isSure = now.confidence > SURE_FRAME || now.confidence - next > FAR_AHEAD || crops > ENOUGH_CROPS;
    if (sureness(now, told) > SURE || (isSure && isWhole(now.axes, told))) break;
  }
  if (!isTold) for (const frame of withPanel(charts, seen)) await look(frame);
  const best = bestOf(charts);
  const taken = best ? [best.labels, ...best.panels].map(({ frame }) => frame) : [];
  const others = frames.filter(
    (f) => f.confidence > LIKELY_PLOT && !taken.some((frame) => overlap(frame.corners, f.corners) > APART),
  );
  let isOneOfSeveral = false;
  for (const { corners: at, kind } of best ? others : [])
    isOneOfSeveral ||= isWhole((await labelsIn(at, kind, standing))?.axes ?? []);
  return { chart: best && (await withWords(best)), others: others.map((f) => f.corners), isOneOfSeveral };
}

async function withWords({ labels, panels, ...chart }: Looked): Promise<FoundChart> {
  const read = async (one: Scales): Promise<Labels> => ({ ...one, words: await one.readWords() });
  const words = await read(labels);
  const beside: Labels[] = [];
  for (const panel of panels) beside.push(await read(panel));
  return { ...chart, labels: words, panels: beside };
}

/** Surely found frames that stand over or under a told one. */
const stackedWith = (told: Corners, found: readonly Frame[]): Corners[] =>
  found.filter((f) => f.confidence > LIKELY_PLOT && areStacked(told, f.corners)).map((f) => f.corners);

/** A frame is moved to its numbers so often. */
const MOST_MOVES = 3;
/** Frames surer than this are where their sides say, and not where their numbers end. */
const SURE_SIDES = 0.8;

/** Frames that the numbers of one speak for instead of it. */
function byNumbers({ labels, confidence }: Looked): Frame[] {
  const moved = confidence < SURE_SIDES ? frameToNumbers(labels) : null;
  return [...framesApart(labels), ...(moved ? [moved] : [])].map(({ corners, panel }) => ({
    corners,
    confidence,
    kind: 'boxed',
    turns: 0,
    panels: panel ? [panel] : [],
  }));
}

/** Frames over and under one that has a flow axis and no pressure, or the other way round: together they are a chart. */
function withPanel(charts: readonly Looked[], seen: readonly Frame[]): Frame[] {
  const halves = charts.filter(({ axes, panels }) => !panels.length && axes.some(isFlow) !== axes.some(isPressure));
  return halves.flatMap(({ labels, confidence }) => {
    const corners = asSeen(labels);
    return seen
      .filter((f) => areStacked(corners, f.corners))
      .slice(0, MOST_PARTNERS)
      .flatMap((f): Frame[] => [
        { corners, confidence, kind: 'boxed', panels: [f.corners] },
        { corners: f.corners, confidence, kind: f.kind, panels: [corners] },
      ]);
  });
}

const MOST_PARTNERS = 2;

/** The corners in the order of the photo again. */
const asSeen = ({ frame: { corners }, turns }: Scales): Corners =>
  corners.map((_, k) => corners[(k + 4 - turns) % 4]!) as unknown as Corners;

/** The flow axis printed under another panel, where this one has none of its own. */
function sharedFlow(labels: Scales, panels: readonly Scales[]): FoundAxis[] {
  if (labels.axes.some(isFlow)) return [];
  return panels.flatMap(({ axes }) => axes.filter(isFlow)).slice(0, 1);
}

/** A chart this surely read ends the search; another is taken before an earlier one where it is clearly surer. */
const SURE = 1.6;
/** Read so surely it tells how the text stands in every frame of the photo. */
const SURELY_STANDING = 1.3;
const CLEARLY = 0.1;
/** What a surely found frame is worth beside surely read scales. */
const FRAME_WORTH = 0.4;
/** Frames this sure are hardly ever wrong: where their numbers are hard to read, another frame would not help. */
const SURE_FRAME = 0.93;
/** Likewise one so much surer than the next. */
const FAR_AHEAD = 0.45;

/** What sides at which the numbers end are worth. */
const ENDS_WORTH = 0.2;

/** How good a chart a frame makes: surely read scales, a likely frame, numbers that end at its sides. */
const worthOf = (c: Looked, told: readonly AxisHint[]): number =>
  sureness(c, told) + FRAME_WORTH * c.confidence + (frameToNumbers(c.labels) ? 0 : ENDS_WORTH);

/** 0 for a frame without scales, 0..1 with some, 1..2 with a flow and a pressure axis: the more, the surer both are. */
function sureness({ axes }: Pick<Looked, 'axes'>, told: readonly AxisHint[]): number {
  const best = (is: (a: { quantity: string }) => boolean): number =>
    told.some(is) ? 1 : Math.max(0, ...axes.filter(is).map((axis) => axis.confidence));
  const both = best(isFlow) * best(isPressure);
  return both > 0 ? 1 + both : 0.5 * Math.max(best(isFlow), best(isPressure));
}

const isPressure = ({ quantity }: { quantity: string }): boolean => quantity.endsWith('_pressure');
const isFlow = ({ quantity }: { quantity: string }): boolean => quantity === 'flow';

/** Whether there is a flow axis and a pressure to read against it: a panel of power alone is no fan chart yet. */
function isWhole(found: readonly FoundAxis[], told: readonly AxisHint[] = []): boolean {
  const all = [...found, ...told];
  return all.some(isFlow) && all.some(isPressure);
}
