import type { WordReader } from '../../words/word-reader.ts';
import { once } from '../../numeric/once.ts';
import { frameMapOf, type FrameMap } from '../frame/frame-map.ts';
import type { SnappedFrame } from '../frame/frame-snap.ts';
import type { Photo } from '../../picture/raster.ts';
import { straighten } from '../sheet.ts';
import { chainWords, joinLines, LINE_GAP, type Word } from './chains.ts';
import { nameAxes, type FoundAxis } from './name-axes.ts';
import { findPieces } from './pieces.ts';
import { readPlotWords, type PlotWord } from './plot-words.ts';
import { readScales, readsAsNumbers, type ReadScale } from './read-scales.ts';
import { layOut, type Box, type Surroundings } from './surroundings.ts';
import { readTitles } from './titles-near.ts';
import { turnedFrame, turnedSurroundings, type Turns } from './turned.ts';

/** What is printed around a plot frame, and how to read what is written in it: that is wanted of few frames. */
export type Scales = {
  readonly turns: Turns;
  /** the frame with its corners in the chart's own order, and its map */
  readonly frame: SnappedFrame;
  readonly map: FrameMap;
  readonly axes: readonly FoundAxis[];
  /** every row and column of numbers, named or not */
  readonly scales: readonly ReadScale[];
  readonly readWords: () => Promise<readonly PlotWord[]>;
};

/** What is printed around a plot frame and in it. */
export type Labels = Scales & { readonly words: readonly PlotWord[] };

/**
 * Reads the numbers and titles of a chart.
 * @param frame corners in order around the plot, seen from the photo: which side is the bottom is found out here
 * @param isTold somebody put the corners: their order is the chart's own, and a plot without a scale is one all the same
 * @param known how the text stands, where other frames on the photo have told
 * @returns null where three corners lie on one line; an empty list of axes where no scale could be read
 */
export async function readLabels(
  photo: Photo,
  frame: SnappedFrame,
  reader: WordReader,
  isTold = false,
  known: Turns | null = null,
): Promise<Scales | null> {
  const first = lay(photo, frame);
  if (!first) return null;
  const tried = isTold ? [first] : known === null ? likelyTurns(first, reader) : turnedTo(first, known);
  let best: Attempt | null = null;
  for await (const laid of tried) {
    const sheet = once(() => straighten(photo, laid.map, laid.frame.polarity));
    const scales = await readScales(laid.around, laid.pieces, laid.words, sheet, reader);
    const attempt = { laid, scales, score: scoreOf(scales) };
    if (!best || attempt.score > best.score) best = attempt;
    if (attempt.score >= GOOD) break;
  }
  if (!best) return null;
  if (isTold || best.score > 0) return finish(best, reader);
  // without a single scale this is no plot: what else stands there need not be read
  const { turns, frame: own, map } = best.laid;
  return { turns, frame: own, map, axes: [], scales: [], readWords: async () => [] };
}

/** Ways the text may stand, likeliest first: those in which words beside the frame hardly read as numbers are left out. */
async function* likelyTurns(first: Laid, reader: WordReader): AsyncGenerator<Laid> {
  const order = lies(first.words) ? ([1, 3, 0, 2] as const) : ([0, 2, 1, 3] as const);
  const found: { laid: Laid; reads: number }[] = [];
  for (const turns of order) {
    const laid = turns === 0 ? first : turnedLaid(first, turns);
    if (!laid) continue;
    const reads = await readsAsNumbers(laid.around, laid.pieces, laid.words, reader);
    if (reads > SURELY_NUMBERS) yield laid;
    else if (reads > HARDLY_NUMBERS) found.push({ laid, reads });
  }
  found.sort((a, b) => b.reads - a.reads);
  for (const { laid } of found.slice(0, 2)) yield laid;
}

/** Of words beside the frame: read so surely as numbers only one way is up; and so poorly that none are. */
const SURELY_NUMBERS = 0.75;
const HARDLY_NUMBERS = 0.12;

type Laid = {
  turns: Turns;
  frame: SnappedFrame;
  map: FrameMap;
  around: Surroundings;
  pieces: ReturnType<typeof findPieces>;
  words: Word[];
};
type Attempt = { laid: Laid; scales: ReadScale[]; score: number };

/** Two scales of four numbers each, one along each direction. */
const GOOD = 6;

function lay(photo: Photo, frame: SnappedFrame): Laid | null {
  const map = frameMapOf(frame);
  if (!map) return null;
  const around = layOut(photo, map, frame.polarity);
  const pieces = findPieces(around);
  return { turns: 0, frame, map, around, pieces, words: chainWords(around, pieces.list) };
}

function turnedLaid(first: Laid, turns: Turns): Laid | null {
  const frame = turnedFrame(first.frame, turns);
  const map = frameMapOf(frame);
  if (!map) return null;
  const { around, pieces } = turnedSurroundings(first.around, first.pieces, map, turns);
  return { turns, frame, map, around, pieces, words: chainWords(around, pieces.list) };
}

function turnedTo(first: Laid, turns: Turns): Laid[] {
  const laid = turns === 0 ? first : turnedLaid(first, turns);
  return laid ? [laid] : [];
}

/** More words run along the columns than along the rows. */
function lies(words: readonly Word[]): boolean {
  const count = (run: Word['run']) =>
    words.filter((w) => w.run === run && w.pieces.length >= 3 && w.pieces.length < 60).length;
  return count('upright') > 1.2 * count('level');
}

/** A level stroke that may be a dash between two words. */
const isDash = ({ x0, x1, y0, y1 }: Box): boolean => x1 - x0 > 2 * (y1 - y0) && x1 - x0 < LONGEST_DASH_PX;
const LONGEST_DASH_PX = 40;

const scoreOf = (scales: readonly ReadScale[]): number => {
  const most = (level: boolean) =>
    Math.max(
      0,
      ...scales
        .filter((s) => level === (s.side === 'bottom' || s.side === 'top'))
        .map((s) => s.fit.weight - 0.5 * s.fit.against),
    );
  return Math.min(4, most(true)) + Math.min(4, most(false));
};

async function finish({ laid, scales }: Attempt, reader: WordReader): Promise<Scales> {
  const { around, pieces, words } = laid;
  const used = new Set(scales.flatMap((s) => s.fit.believed.flatMap((b) => s.labels[b.index]!.word.pieces)));
  // a mark between a label and a title may be counted to both
  const isTick = (w: Word): boolean => 2 * w.pieces.filter((p) => used.has(p)).length >= w.pieces.length;
  // what stands in a row of numbers is no part of a word that begins in the plot
  const numbers = new Set(scales.flatMap((s) => s.labels.map((l) => l.word)));
  const lines = joinLines(
    words.filter((w) => !isTick(w)),
    around.frame,
    LINE_GAP,
    (w) => !numbers.has(w),
    pieces.list.filter(isDash),
  );
  const { titles, lines: titleLines } = await readTitles(around, pieces, lines, scales, reader);
  const axes = nameAxes(scales, titles);
  const rest = lines.filter((l) => !titleLines.has(l));
  const sizes = scales.flatMap((s) => s.fit.believed.map((b) => s.labels[b.index]!.word.size)).sort((a, b) => a - b);
  const taken = [...words.filter(isTick), ...titleLines];
  const size = sizes[sizes.length >> 1] ?? usualSize(words);
  const readWords = once(() => readPlotWords(around, pieces, rest, taken, size, reader));
  return { turns: laid.turns, frame: laid.frame, map: laid.map, axes, scales, readWords };
}

function usualSize(words: readonly Word[]): number {
  const sizes = words.filter((w) => w.pieces.length > 2).map((w) => w.size);
  return sizes.sort((a, b) => a - b)[sizes.length >> 1] ?? 16;
}
