import type { WordCrop, WordKind, WordRead, WordReader } from '../words/word-reader.ts';
import { BORDER_PX, CAPITAL_PX, sampleBox, type Sample } from './crop/sample-box.ts';
import { prepare, type Preparation } from './crop/preparations.ts';
import type { Surface, TextBox } from './surface.ts';
import { voteOnLine, type VotedWord } from './vote/vote.ts';
import type { ReadWord } from './written.ts';

/** Every line is read this way, and lines these do not agree on in the other ways too. */
const FIRST: readonly Preparation[] = ['stretched', 'levelled', 'softened'];
const MORE: readonly Preparation[] = ['evened', 'filled', 'sharpened'];
/** Characters under this share of the votes are asked about again. */
const SURE = 0.86;

type Line = { readonly index: number; readonly sample: Sample; readonly reads: WordRead[] };

/**
 * Reads lines of text: several preparations of each, and a vote on every character.
 * @param boxes where they stand on the surface, flat pixels
 * @param isForeign flat places that are no part of any line: rulings, boxes
 * @returns the words of each box in the boxes' order, places in flat pixels; `line` is the box's number
 */
export async function readBoxes(
  surface: Surface,
  boxes: readonly TextBox[],
  words: WordReader,
  isForeign?: (x: number, y: number, box: TextBox) => boolean,
): Promise<ReadWord[][]> {
  const lines = boxes.map((box, index): Line => ({
    index,
    sample: sampleBox(surface, box, isForeign && ((x, y) => isForeign(x, y, box))),
    reads: [],
  }));
  await readIn(FIRST, lines, words);
  await readIn(
    MORE,
    lines.filter(({ reads }) => !isAgreed(reads)),
    words,
  );
  return lines.map(({ index, sample, reads }) =>
    voteOnLine(reads, CAPITAL_PX).map((word) => onSurface(word, sample, boxes[index]!, index)),
  );
}

/** Lines of about one character are looked at as such: modes meant for lines see nothing there. */
const kindOf = ({ width, height }: WordCrop): WordKind => (width < 1.05 * height ? 'glyph' : 'text');

async function readIn(ways: readonly Preparation[], lines: readonly Line[], words: WordReader): Promise<void> {
  const asked = lines.flatMap((line) => ways.map((way) => ({ line, crop: prepare(line.sample, way) })));
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

function isAgreed(reads: readonly WordRead[]): boolean {
  if (reads.some((read) => !read.glyphs.length)) return false;
  return voteOnLine(reads, CAPITAL_PX).every(({ glyphs }) => glyphs.every(({ share }) => share >= SURE));
}

function onSurface({ glyphs, seen, passes }: VotedWord, sample: Sample, box: TextBox, line: number): ReadWord {
  const x = (i: number) => sample.toFlat(i - BORDER_PX, 0)[0];
  const placed = glyphs.map((glyph) => ({ ...glyph, x0: x(glyph.x0), x1: x(glyph.x1) }));
  const [x0, x1] = [placed[0]!.x0, placed.at(-1)!.x1];
  const fall = box.slope * ((x0 + x1) / 2 - (box.x0 + box.x1) / 2);
  return {
    text: glyphs.map(({ text }) => text).join(''),
    glyphs: placed,
    x0,
    x1,
    y0: box.y0 + fall,
    y1: box.y1 + fall,
    capitalHeight: box.y1 - box.y0,
    line,
    seen,
    passes,
    cutBefore: false,
    cutBehind: false,
  };
}
