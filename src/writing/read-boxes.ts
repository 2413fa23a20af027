import type { WordCrop, WordKind, WordRead, WordReader } from '../words/word-reader.ts';
import { BORDER_PX, CAPITAL_PX, sampleBox, type Sample } from './crop/sample-box.ts';
import { prepare, WAYS_TO_READ } from './crop/preparations.ts';
import { lightingOf } from './crop/relief.ts';
import type { Surface, TextBox } from './surface.ts';
import { voteOnLine, type VotedWord } from './vote/vote.ts';
import { UNREAD, type InkWitness } from './vote/ink-witness.ts';
import type { ReadWord } from './written.ts';

/** Characters under this share of the votes are asked about again. */
const SURE = 0.86;
/** Lines no reading of which is surer are no text. */
const HOPELESS = { print: 0.3, relief: 0.2 };
/** Two good readings that agree are enough: the sum of the squares of their confidences. */
const ENOUGH = 1.1;

/** A box whose pieces of ink are known, flat pixels. */
export type InkedBox = TextBox & { readonly letters?: readonly Box[]; readonly marks?: readonly Box[] };
type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

type Line = { readonly index: number; readonly sample: Sample; readonly reads: WordRead[] };

/**
 * Reads lines of text: several preparations of each, and a vote on every character.
 * @param boxes where they stand on the surface, flat pixels
 * @param isForeign flat places that are no part of any line: rulings, boxes
 * @param kind of letters that may stand there
 * @returns the words of each box in the boxes' order, places in flat pixels; `line` is the box's number
 */
export async function readBoxes(
  surface: Surface,
  boxes: readonly InkedBox[],
  words: WordReader,
  isForeign?: (x: number, y: number, box: TextBox) => boolean,
  kind: 'print' | 'print or relief' = 'print or relief',
): Promise<ReadWord[][]> {
  const samples =
    kind === 'print' ? samplesOf(surface, boxes, isForeign, 'upright') : sampleAll(surface, boxes, isForeign);
  const lines = samples.map((sample, index): Line => ({ index, sample, reads: [] }));
  for (let turn = 0; turn < TURNS; turn++) await readIn(turn, turn === 0 ? lines : lines.filter(isWorthMore), words);
  return lines.map(({ index, sample, reads }) =>
    voteOnLine(reads, CAPITAL_PX, inkOf(boxes[index]!, sample)).map((word) =>
      onSurface(word, sample, boxes[index]!, index),
    ),
  );
}

/** Lines of about one character are looked at as such: modes meant for lines see nothing there. */
const kindOf = ({ width, height }: WordCrop): WordKind => (width < 1.05 * height ? 'glyph' : 'text');

/**
 * Samples of all boxes; reliefs know where the light comes from, which is the same all over a plate.
 * @param turn `around` samples them upside down
 */
export function sampleAll(
  surface: Surface,
  boxes: readonly TextBox[],
  isForeign?: (x: number, y: number, box: TextBox) => boolean,
  turn: 'upright' | 'around' = 'upright',
): Sample[] {
  const samples = samplesOf(surface, boxes, isForeign, turn);
  const lightings = samples.map((sample) => lightingOf(sample, CAPITAL_PX));
  const votes = new Map<number, number>();
  for (const { isRelief, angle, likelihood } of lightings)
    if (isRelief) votes.set(angle, (votes.get(angle) ?? 0) + likelihood);
  const [light] = [...votes].sort((a, b) => b[1] - a[1])[0] ?? [];
  return samples.map((sample, i) => (lightings[i]!.isRelief ? { ...sample, light } : sample));
}

const samplesOf = (
  surface: Surface,
  boxes: readonly TextBox[],
  isForeign: ((x: number, y: number, box: TextBox) => boolean) | undefined,
  turn: 'upright' | 'around',
): Sample[] => boxes.map((box) => sampleBox(surface, box, isForeign && ((x, y) => isForeign(x, y, box)), turn));

const TURNS = Math.max(...Object.values(WAYS_TO_READ).map((turns) => turns.length));

/** In which ways a sample is read, turn by turn. */
export const waysOf = (sample: Sample) => WAYS_TO_READ[kindOfLetters(sample)];
const kindOfLetters = ({ light }: Sample) => (light === undefined ? 'print' : 'relief');

async function readIn(turn: number, lines: readonly Line[], words: WordReader): Promise<void> {
  const asked = lines.flatMap((line) =>
    (waysOf(line.sample)[turn] ?? []).map((way) => ({ line, crop: prepare(line.sample, way) })),
  );
  for (const kind of ['text', 'glyph'] as const) {
    const some = asked.filter(({ crop }) => kindOf(crop) === kind);
    if (!some.length) continue;
    const reads = await words(
      some.map(({ crop }) => crop),
      kind,
    );
    some.forEach(({ line }, i) => line.reads.push(reads[i]!));
  }
}

/** The pieces of ink of a box, in its crops. */
function inkOf(
  { x0, x1, y0, y1, slope, letters, marks }: InkedBox,
  { zoom, width, height }: Sample,
): InkWitness | undefined {
  if (!letters || !marks) return undefined;
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2];
  const placed = (b: Box) => {
    const fall = slope * ((b.x0 + b.x1) / 2 - cx);
    const x = (at: number) => (at - cx) * zoom + width / 2 + BORDER_PX;
    const y = (at: number) => (at - fall - cy) * zoom + height / 2 + BORDER_PX;
    return { x0: x(b.x0), x1: x(b.x1), y0: y(b.y0), y1: y(b.y1) };
  };
  const base = ((y1 - y0) / 2) * zoom + height / 2 + BORDER_PX;
  return { letters: letters.map(placed), marks: marks.map(placed), base };
}

/** Readings disagree, and not because nobody can make anything of it: dirt is not read again and again. */
function isWorthMore({ reads, sample }: Line): boolean {
  const surest = Math.max(...reads.map((read) => (read.glyphs.length ? read.confidence : 0)));
  if (surest < HOPELESS[kindOfLetters(sample)]) return false;
  if (reads.reduce((sum, read) => sum + (read.glyphs.length ? read.confidence ** 2 : 0), 0) < ENOUGH) return true;
  return voteOnLine(reads, CAPITAL_PX).some(({ glyphs }) => glyphs.some(({ share }) => share < SURE));
}

/** A word on the surface: what could not be read at its ends is no part of it, and said. */
function onSurface({ glyphs, seen, passes }: VotedWord, sample: Sample, box: TextBox, line: number): ReadWord {
  const x = (i: number) => sample.toFlat(i - BORDER_PX, 0)[0];
  const placed = glyphs.map((glyph) => ({ ...glyph, x0: x(glyph.x0), x1: x(glyph.x1) }));
  const isRead = placed.map(({ text }) => text !== UNREAD);
  const from = Math.max(0, isRead.indexOf(true));
  const to = isRead.includes(true) ? isRead.lastIndexOf(true) + 1 : placed.length;
  const own = placed.slice(from, to);
  const [x0, x1] = [own[0]!.x0, own.at(-1)!.x1];
  const fall = box.slope * ((x0 + x1) / 2 - (box.x0 + box.x1) / 2);
  return {
    text: own.map(({ text }) => text).join(''),
    glyphs: own,
    x0,
    x1,
    y0: box.y0 + fall,
    y1: box.y1 + fall,
    capitalHeight: box.y1 - box.y0,
    line,
    seen,
    passes,
    cutBefore: from > 0,
    cutBehind: to < placed.length,
  };
}
