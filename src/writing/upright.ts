import type { WordReader } from '../words/word-reader.ts';
import { prepare } from './crop/preparations.ts';
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
/** Confidence to this power: half sure is nearly nothing. */
const CLEAR = 4;
/** Photos are mostly taken the right way up. */
const PREFERRED = 1.15;

/** A surface the way one reads it, and the lines on it. */
export type Upright = { readonly surface: Surface; readonly found: FoundLines };

/**
 * Turns a surface so that its text can be read. Whether lines run across or down is seen by how letters stand side by
 * side, which of the two ways is up by how surely they are read.
 */
export async function turnUpright(surface: Surface, words: WordReader): Promise<Upright> {
  const tried = async (turns: Turns, view = viewOf(surface, turns)) => ({
    ...view,
    ...(await readabilityOf(view.surface, view.found.lines, words)),
  });
  const asItLies = await tried(0);
  if (asItLies.readability >= SURE) return asItLies;
  const onItsSide = viewOf(surface, 1);
  const isOnItsSide = lettersInLine(onItsSide) > CLEARLY_MORE * lettersInLine(asItLies);
  const [one, other] = isOnItsSide ? [await tried(1, onItsSide), await tried(3)] : [asItLies, await tried(2)];
  return sensible(other) > PREFERRED * sensible(one) ? other : one;
}

/** Single characters look like some upside down too; lines of them hardly ever do. */
const sensible = ({ readability, clearLetters }: Readability): number => readability * clearLetters;

type Turns = 0 | 1 | 2 | 3;
type Readability = { readonly readability: number; readonly clearLetters: number };

function viewOf(surface: Surface, turns: Turns): Upright {
  const view = turned(surface, turns);
  return { surface: view, found: findLines(flatGrey(view)) };
}

/** Letters that stand in lines of several. */
const lettersInLine = ({ found }: Upright): number =>
  found.lines.reduce((sum, { letters }) => sum + (letters.length >= LINE ? letters.length : 0), 0);

/** How surely lines are read: their mean confidence, and how many letters are read clearly. */
async function readabilityOf(surface: Surface, lines: readonly TextLine[], words: WordReader): Promise<Readability> {
  const asked = [...lines].sort((a, b) => b.letters.length - a.letters.length).slice(0, ASKED);
  const reads = await words(
    sampleAll(surface, asked).map((sample) => prepare(sample, waysOf(sample).first[1]!)),
    'text',
  );
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
