import type { WordRead, WordReader } from '../../words/word-reader.ts';
import type { Sheet } from '../sheet.ts';
import { withoutHalves, withWholes } from './blank-thousands.ts';
import type { Word } from './chains.ts';
import { cropOf, softened, threefold } from './crops.ts';
import { mendPoints } from './mend-points.ts';
import type { Pieces } from './pieces.ts';
import { scaleEnds, type ScaleEnd } from './scale-ends.ts';
import { numbersBeyond } from './numbers-beyond.ts';
import { fitScale, type ScaleFit } from './scale-fit.ts';
import type { Surroundings } from './surroundings.ts';
import { findTickGroups, type Side, type TickGroup } from './tick-groups.ts';
import { tickLabel, type TickLabel } from './tick-labels.ts';
import { matchTicks, tickPlaces } from './tick-places.ts';

/** A scale read off the labels on one side of the frame. */
export type ReadScale = {
  readonly side: Side;
  readonly isInside: boolean;
  readonly distance: number;
  readonly fit: ScaleFit;
  readonly labels: readonly TickLabel[];
  readonly low: ScaleEnd;
  readonly high: ScaleEnd;
  /** how far ticks (or labels) stand from where both ends put them, bent paper allowed for: share of the side */
  readonly residual: number;
  /** a label says a tenth of what the others say there */
  readonly arePointsUnsure: boolean;
  /** labels whose tick or grid line was found */
  readonly ticked: number;
};

/** Not more labels than this are read: what stands far off is looked at last. */
const MOST_LABELS = 64;
const FAR = 7;
/** A longer row is text or pattern, unless some words spread over it read as numbers. */
const LONGEST_ROW = 16;
/** Of labels not understood not more than this are read again; none where so many others agree. */
const MOST_AGAIN = 12;
const ENOUGH = 6;

/** Reads the rows and columns of numbers around the frame, and fits a scale to each that is one. */
export async function readScales(
  all: Surroundings,
  pieces: Pieces,
  words: readonly Word[],
  sheet: () => Sheet,
  reader: WordReader,
): Promise<ReadScale[]> {
  const groups = findTickGroups(all, words).sort((a, b) => Math.abs(a.distance) - Math.abs(b.distance));
  const reads = new Map<Word, WordRead>();
  const read = async (some: readonly Word[]) => {
    const fresh = [...new Set(some)].filter((w) => !reads.has(w));
    const got = await reader(
      fresh.map((w) => cropOf(all, pieces, w)),
      'number',
    );
    fresh.forEach((w, i) => reads.set(w, got[i]!));
  };
  // text far off or inside the frame is mostly something else: three words of it tell
  const near = groups.filter((g) => !g.isInside && g.distance < FAR && g.words.length <= LONGEST_ROW);
  const far = groups.filter((g) => !near.includes(g)).slice(0, 12);
  await read([...near.flatMap((g) => g.words), ...far.flatMap(samplesOf)].slice(0, MOST_LABELS));
  const promising = far.filter((g) => samplesOf(g).filter((w) => isNumber(reads.get(w))).length >= 2);
  await read(promising.flatMap((g) => g.words).slice(0, Math.max(0, MOST_LABELS - reads.size)));

  const scales: ReadScale[] = [];
  for (const group of [...near, ...promising]) {
    const scale = await scaleOf(all, pieces, group, words, reads, sheet, reader);
    if (scale) scales.push(scale);
  }
  return withOwnOnly(withoutRepeats(scales));
}

const samplesOf = ({ words }: TickGroup): Word[] => [words[0]!, words[words.length >> 1]!, words[words.length - 1]!];
const isNumber = (read: WordRead | undefined): boolean =>
  Boolean(read && /\d/.test(read.text) && read.confidence > 0.5);

/** Rows nearest to the frame that tell which way is up, and words of each: a line of text among them has its share only. */
const PROBED_ROWS = 4;
const PROBED_OF_ROW = 4;
/** Two rows of numbers tell for sure. */
const ENOUGH_PROBED = 2 * PROBED_OF_ROW;

/** How surely words beside the frame read as numbers, 0..1: by a few of them. */
export async function readsAsNumbers(
  all: Surroundings,
  pieces: Pieces,
  words: readonly Word[],
  reader: WordReader,
): Promise<number> {
  const reads = await reader(
    probed(findTickGroups(all, words)).map((w) => cropOf(all, pieces, w)),
    'number',
  );
  return reads
    .map((r) => (/\d/.test(r.text) ? r.confidence : 0))
    .sort((a, b) => b - a)
    .slice(0, ENOUGH_PROBED)
    .reduce((sum, confidence) => sum + confidence / ENOUGH_PROBED, 0);
}

/** Of the rows nearest to the frame the longest words, each once: 0, 8 and 11 read the same upside down. */
export function probed(groups: readonly TickGroup[]): Word[] {
  const rows = groups.filter((g) => g.distance < FAR).sort((a, b) => Math.abs(a.distance) - Math.abs(b.distance));
  const long = (w: Word): number => (w.x1 - w.x0) / w.size;
  const longest = rows
    .slice(0, PROBED_ROWS)
    .flatMap(({ words }) => words.toSorted((a, b) => long(b) - long(a)).slice(0, PROBED_OF_ROW));
  return [...new Set(longest)];
}

async function scaleOf(
  all: Surroundings,
  pieces: Pieces,
  group: TickGroup,
  words: readonly Word[],
  reads: Map<Word, WordRead>,
  sheet: () => Sheet,
  reader: WordReader,
): Promise<ReadScale | null> {
  const labelsNow = () =>
    withWholes(
      all,
      group.side,
      group.words.filter((w) => reads.has(w)).map((w) => tickLabel(all, group.side, w, reads.get(w)!)),
    );
  let labels = labelsNow();
  let fit = fitScale(labels);
  const oddNow = () =>
    fit && fit.weight >= ENOUGH && !fit.against
      ? []
      : labels.filter((l, i) => reads.has(l.word) && !fit?.believed.some((b) => b.index === i)).slice(0, MOST_AGAIN);
  // what was not understood is looked at once more: as any text, as handwriting reads better so, and softened
  for (const look of [readAgain, readSoftened]) {
    const odd = oddNow();
    const readable = labels.filter((l) => l.numbers.length).length;
    if (!odd.length || !(readable >= 2 || (group.distance < 3 && !group.isInside))) break;
    const again = await look(all, pieces, odd, reader);
    const before = fit?.weight ?? 0;
    const kept = new Map(odd.map((l) => [l.word, reads.get(l.word)!]));
    odd.forEach((l, i) => reads.set(l.word, again[i]!));
    const others = labelsNow();
    const other = fitScale(others);
    if (other && other.weight > before) [labels, fit] = [others, other];
    else kept.forEach((r, w) => reads.set(w, r));
  }
  if (!fit) return null;
  const believed = new Set(fit.believed.map((b) => b.index));
  labels = withoutHalves(labels, (i) => believed.has(i));
  fit = fitScale(labels) ?? fit;
  const beyond = numbersBeyond(all, group, fit, words);
  const further = await reader(
    beyond.map((w) => cropOf(all, pieces, w)),
    'number',
  );
  const more = [...labels, ...beyond.map((w, i) => tickLabel(all, group.side, w, further[i]!))];
  const longer = beyond.length ? fitScale(more) : null;
  if (longer && longer.weight > fit.weight) [labels, fit] = [more, longer];
  const mended = mendPoints(labels, fit);
  return placed(all, group, labels, mended.fit, sheet(), mended.isUnsure);
}

/** As any text; what is still nothing then, as one thing: grain around a word hides it from a reader of lines. */
async function readAgain(
  all: Surroundings,
  pieces: Pieces,
  labels: readonly TickLabel[],
  reader: WordReader,
): Promise<WordRead[]> {
  const crops = labels.map((l) => cropOf(all, pieces, l.word));
  const reads = await reader(
    crops.map((c, i) => (isLone(labels[i]!.word) ? threefold(c) : c)),
    'text',
  );
  const out = reads.map((r, i) => (isLone(labels[i]!.word) ? commonest(r) : r));
  const empty = labels.flatMap((_, i) => (out[i]!.text ? [] : [i]));
  const third = await reader(
    empty.map((i) => crops[i]!),
    'glyph',
  );
  empty.forEach((i, k) => (out[i] = third[k]!));
  return out;
}

const readSoftened = (
  all: Surroundings,
  pieces: Pieces,
  labels: readonly TickLabel[],
  reader: WordReader,
): Promise<WordRead[]> =>
  reader(
    labels.map((l) => softened(cropOf(all, pieces, l.word))),
    'number',
  );

const isLone = (w: Word): boolean => w.x1 - w.x0 < 1.1 * w.size;

/** The character read most often of the three copies. */
function commonest(read: WordRead): WordRead {
  const counts = new Map<string, number>();
  for (const c of read.text.replace(/\s/g, '')) counts.set(c, (counts.get(c) ?? 0) + 1);
  const [text, count] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? ['', 0];
  return { text, confidence: read.confidence * Math.min(1, count / 3), glyphs: [] };
}

function placed(
  all: Surroundings,
  { side, isInside, distance }: TickGroup,
  labels: readonly TickLabel[],
  fit: ScaleFit,
  sheet: Sheet,
  arePointsUnsure: boolean,
): ReadScale {
  const { frame } = all;
  const size = labels[0]!.word.size / (side === 'left' || side === 'right' ? frame.y1 - frame.y0 : frame.x1 - frame.x0);
  const to = (v: number) => (fit.scale === 'log' ? Math.log(v) : v);
  const predicted = fit.believed.map((b) => (to(b.value) - fit.offset) / fit.slope);
  const matched = matchTicks(predicted, tickPlaces(sheet, side), (isInside ? 1.6 : 0.6) * size);
  const own = fit.believed.map((b): [number, number] => [labels[b.index]!.at, b.value]);
  const ticked = fit.believed.flatMap((b, i): [number, number][] =>
    matched && matched.places[i] != null ? [[matched.places[i], b.value]] : [],
  );
  // labels inside the plot stand on their ticks, not beside them; without ticks the rounder ends tell by how much
  const byLabels = (isInside ? [0, -0.5, -0.75, -1, -1.3] : [0])
    .map((k) =>
      scaleEnds(
        fit,
        own.map(([p, v]) => [p + k * size, v]),
        false,
      ),
    )
    .reduce((a, b) => (b.cost < a.cost ? b : a));
  const byTicks = matched ? scaleEnds(fit, ticked, true) : null;
  // lines that are another scale's fit worse than the labels do themselves
  const isBorneOut = byTicks && (isInside || byTicks.residual < Math.max(0.0012, 1.3 * byLabels.residual));
  const { low, high, residual } = isBorneOut ? byTicks : byLabels;
  const ticks = isBorneOut ? matched!.count : 0;
  return { side, isInside, distance, fit, labels, low, high, residual, ticked: ticks, arePointsUnsure };
}

/** Beyond its ends by more than this share of the side stands nothing of a scale. */
const BEYOND = 0.02;

/** What another scale believes, the first number along the other side for instance, does not contradict a scale. */
export function withOwnOnly(scales: readonly ReadScale[]): ReadScale[] {
  const wordsOf = (s: ReadScale) => s.fit.believed.map((b) => s.labels[b.index]!.word);
  const taken = new Map(scales.flatMap((s) => wordsOf(s).map((word) => [word, s] as const)));
  return scales.map((s) => {
    const own = new Set(s.fit.believed.map((b) => b.index));
    const isAgainst = ({ at, numbers, word }: TickLabel, i: number): boolean =>
      numbers.length > 0 && !own.has(i) && !taken.has(word) && at > -BEYOND && at < 1 + BEYOND;
    return { ...s, fit: { ...s.fit, against: s.labels.filter(isAgainst).length } };
  });
}

/** Two groups that share words or repeat each other are one scale: the surer stays. */
function withoutRepeats(scales: readonly ReadScale[]): ReadScale[] {
  const out: ReadScale[] = [];
  for (const s of [...scales].sort((a, b) => b.fit.weight - a.fit.weight)) {
    const words = new Set(s.fit.believed.map((b) => s.labels[b.index]!.word));
    const shares = (o: ReadScale) =>
      o.side === s.side && o.fit.believed.filter((b) => words.has(o.labels[b.index]!.word)).length > 1;
    if (!out.some(shares)) out.push(s);
  }
  return out;
}
