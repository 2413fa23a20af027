import type { WordRead, WordReader } from '../words/word-reader.ts';
import { prepare } from './crop/preparations.ts';
import type { Sample } from './crop/sample-box.ts';
import { flatGrey } from './flat-grey.ts';
import { turned } from './lay-flat.ts';
import { findLines, type FoundLines } from './lines/find-lines.ts';
import type { TextLine } from './lines/text-lines.ts';
import { sampleAll, waysOf } from './read-boxes.ts';
import type { Surface } from './surface.ts';

/** So many of the longest lines tell which way up a surface is. */
const ASKED = 16;
/** Mean confidence of lines read the right way up; upside down they stay far under it. */
const SURE = 0.62;
/** So many letters side by side are a line; fewer may stand in a row by chance. */
const LINE = 4;
const CLEARLY_MORE = 1.3;
/** Text that runs across has this share of its letters in lines. */
const LEAST_IN_LINE = 0.33;
/** Confidence to this power: half sure is nearly nothing. */
const CLEAR = 4;
/** Photos are mostly taken the right way up. */
const PREFERRED = 1.15;

/** A surface the way one reads it, the lines on it, and how well its longest ones can be read, 0..1. */
export type Upright = View & { readonly readability: number };
type View = { readonly surface: Surface; readonly found: FoundLines };

/**
 * Turns a surface so that its text can be read. Whether lines run across or down is seen by how letters stand side by
 * side, which of the two ways is up by how surely they are read.
 */
export async function turnUpright(surface: Surface, words: WordReader): Promise<Upright> {
  const asItLies = viewOf(surface, 0);
  const known = await readabilityOf(asItLies, 'upright', words);
  if (known.readability >= SURE && runsAcross(asItLies)) return { ...asItLies, readability: known.readability };
  const onItsSide = viewOf(surface, 1);
  const isOnItsSide = lettersInLine(onItsSide) > CLEARLY_MORE * lettersInLine(asItLies);
  const view = isOnItsSide ? onItsSide : asItLies;
  const one = isOnItsSide ? await readabilityOf(view, 'upright', words) : known;
  const other = await readabilityOf(view, 'around', words);
  return sensible(other) > PREFERRED * sensible(one)
    ? { ...viewOf(surface, isOnItsSide ? 3 : 2), readability: other.readability }
    : { ...view, readability: one.readability };
}

/** Single characters look like some upside down too; lines of them hardly ever do. */
const sensible = ({ readability, clearLetters }: Readability): number => readability * clearLetters;

type Turns = 0 | 1 | 2 | 3;
/** As the lines lie, or standing on their heads. */
type Way = 'upright' | 'around';
type Readability = { readonly readability: number; readonly clearLetters: number };

function viewOf(surface: Surface, turns: Turns): View {
  const view = turned(surface, turns);
  return { surface: view, found: findLines(flatGrey(view)) };
}

/** Letters that stand in lines of several. */
const lettersInLine = ({ found }: View): number =>
  found.lines.reduce((sum, { letters }) => sum + (letters.length >= LINE ? letters.length : 0), 0);

/** On a plate that lies on its side letters stand alone, and some of them look like others: an `H` like an `I`. */
const runsAcross = (view: View): boolean =>
  lettersInLine(view) >= LEAST_IN_LINE * view.found.lines.reduce((sum, { letters }) => sum + letters.length, 0);

/** Each sample's surest reading: what may be a relief is read as print too. */
async function readOnce(samples: readonly Sample[], words: WordReader): Promise<WordRead[]> {
  const asked = samples.flatMap((sample, line) =>
    waysOf(sample)[0]!
      .slice(0, sample.light === undefined ? 1 : 2)
      .map((way) => ({ line, crop: prepare(sample, way) })),
  );
  const reads = await words(
    asked.map(({ crop }) => crop),
    'text',
  );
  const surest: WordRead[] = [];
  asked.forEach(({ line }, i) => {
    if (!surest[line] || reads[i]!.confidence > surest[line].confidence) surest[line] = reads[i]!;
  });
  return surest;
}

/** Long lines with clear edges are text; a mottled ground has long ones too, but faint. */
const likeText = ({ worth, letters }: TextLine) => worth * Math.sqrt(letters.length);

/** How surely lines are read: their mean confidence, and how many letters are read clearly. */
async function readabilityOf({ surface, found }: View, way: Way, words: WordReader): Promise<Readability> {
  const asked = [...found.lines].sort((a, b) => likeText(b) - likeText(a)).slice(0, ASKED);
  const reads = await readOnce(sampleAll(surface, asked, undefined, way), words);
  let [sure, weight, clearLetters] = [0, 0, 0];
  reads.forEach(({ glyphs, confidence }, i) => {
    const letters = asked[i]!.letters.length;
    weight += letters;
    // nothing read counts as unsure
    if (glyphs.length) sure += letters * confidence;
    // what nobody can read says nothing of which way is up
    clearLetters += glyphs.reduce((sum, glyph) => sum + glyph.confidence ** CLEAR, 0);
  });
  return { readability: weight ? sure / weight : 0, clearLetters };
}
