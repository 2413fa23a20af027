import { preparePhoto } from '../picture/raster.ts';
import type { WordReader } from '../words/word-reader.ts';
import { blurred, type Field } from './crop/filters.ts';
import { flatGrey } from './flat-grey.ts';
import { findLines, sharedPlace, type FoundLines } from './lines/find-lines.ts';
import type { TextLine } from './lines/text-lines.ts';
import { readBoxes } from './read-boxes.ts';
import type { Surface, TextBox } from './surface.ts';
import type { ReadWord } from './written.ts';

/** A line read as clearly as this stays as it is. */
const CLEAR = 0.8;
/** So many unclear lines, and such a share of all, are worth the time of looking again: screws and emblems are never clear. */
const WORTH_IT = { lines: 3, share: 0.2 };
/** A plate has no more values that are hard to read: the rest is grain. */
const MOST_LINES = 20;
/** Lines that share more of the smaller one's area stand in one place. */
const SAME_PLACE = 0.2;
/** Heights of letters, shares of what is usual. */
const HEIGHTS = { least: 0.5, most: 2.2 };
/** Values are printed larger than labels, and grain that looks like letters is smaller: they stand at this share of all heights. */
const VALUES = 0.8;
/** Height of letters where none are known, flat pixels. */
const SUPPOSED_PX = 40;
/** Dots of a figure stand a sixth of its height apart: blurred by less than half of that they become strokes. */
const SOFTNESS = 0.055;

/** A line and what was read in it. */
type ReadLine = { readonly line: TextBox; readonly words: readonly ReadWord[] };

/**
 * Looks again where letters were not read clearly, with punched dots run together into strokes. What is read more clearly than
 * before takes the place of what stood there.
 * @param read the words of each line found, in the lines' order
 */
export async function lookAgain(
  surface: Surface,
  found: FoundLines,
  read: readonly (readonly ReadWord[])[],
  words: WordReader,
): Promise<ReadWord[]> {
  const known = found.lines.map((line, i) => ({ line, words: read[i]! }));
  const usual = usualHeight(found);
  const unclear = known.filter((one) => clarityOf(one) < CLEAR);
  const hardToRead = unclear.filter(({ line }) => isText(line, usual)).length;
  if (hardToRead < Math.max(WORTH_IT.lines, WORTH_IT.share * known.length)) return read.flat();
  const clear = known.filter((one) => !unclear.includes(one));
  const soft = blurred(flatGrey(surface), SOFTNESS * usual);
  const lines = findLines(soft)
    .lines.filter((line) => isText(line, usual) && !clear.some((one) => sharedPlace(one.line, line) > SAME_PLACE))
    .sort((a, b) => b.worth - a.worth)
    .slice(0, MOST_LINES);
  const isRuled = (x: number, y: number) => found.ruled[Math.round(y) * surface.width + Math.round(x)] === 1;
  const again = await readBoxes(asSurface(soft), lines, words, isRuled, 'print');
  const rivals = lines.map((line, i) => ({ line, words: numbered(again[i]!, known.length + i) }));
  return [...clear, ...bestOf([...unclear, ...rivals])].flatMap((one) => one.words);
}

/** Of lines in one place those that are read most clearly. */
function bestOf(lines: readonly ReadLine[]): ReadLine[] {
  const kept: ReadLine[] = [];
  for (const one of [...lines].sort((a, b) => worthOf(b) - worthOf(a)))
    if (!kept.some(({ line }) => sharedPlace(line, one.line) > SAME_PLACE)) kept.push(one);
  return kept;
}

const sharesOf = ({ words }: ReadLine) =>
  words.flatMap(({ glyphs, seen, passes }) => glyphs.map(({ share }) => (share * seen) / Math.max(1, passes)));
const clarityOf = (one: ReadLine) => {
  const shares = sharesOf(one);
  return shares.length ? shares.reduce((sum, share) => sum + share, 0) / shares.length : 0;
};
/** What is read clearly counts, what is guessed counts against it. */
const worthOf = (one: ReadLine) => sharesOf(one).reduce((sum, share) => sum + share - 0.5, 0);

const numbered = (words: readonly ReadWord[], line: number): ReadWord[] =>
  words.map((word) => ({ ...word, line, isSecondLook: true }));

function usualHeight({ lines }: FoundLines): number {
  const heights = lines.flatMap(({ letters, y0, y1 }) => (letters.length > 3 ? [y1 - y0] : []));
  return heights.sort((a, b) => a - b)[Math.floor(VALUES * heights.length)] ?? SUPPOSED_PX;
}

const isText = ({ letters, y0, y1 }: TextLine, usual: number) =>
  letters.length > 1 && y1 - y0 > HEIGHTS.least * usual && y1 - y0 < HEIGHTS.most * usual;

/** A view as a surface of its own, to be read from. */
function asSurface({ width, height, values }: Field): Surface {
  const rgb = new Uint8Array(3 * values.length);
  values.forEach((v, k) => rgb.fill(Math.min(255, Math.max(0, Math.round(v))), 3 * k, 3 * k + 3));
  return { width, height, photo: preparePhoto({ width, height, rgb }), photoPixels: 1, toPhoto: (x, y) => [x, y] };
}
