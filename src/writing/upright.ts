import type { WordRead, WordReader } from '../words/word-reader.ts';
import { prepare } from './crop/preparations.ts';
import { sampleBox } from './crop/sample-box.ts';
import { flatGrey } from './flat-grey.ts';
import { turned } from './lay-flat.ts';
import { findLines, type FoundLines } from './lines/find-lines.ts';
import type { TextLine } from './lines/text-lines.ts';
import type { Surface } from './surface.ts';

/** So many of the longest lines tell which way up a surface is. */
const ASKED = 14;
/** Mean confidence of lines read the right way up; upside down they stay far under it. */
const SURE = 0.62;
/** So many letters side by side are a line; fewer may stand in a row by chance. */
const LINE = 4;
const CLEARLY_MORE = 1.3;

/** A surface the way one reads it, and the lines on it. */
export type Upright = { readonly surface: Surface; readonly found: FoundLines };

/**
 * Turns a surface so that its text can be read. Whether lines run across or down is seen by how letters stand side by
 * side, which of the two ways is up by how surely they are read.
 */
export async function turnUpright(surface: Surface, words: WordReader): Promise<Upright> {
  const tried = async (turns: Turns, view = viewOf(surface, turns)) => ({
    ...view,
    readability: await readabilityOf(view.surface, view.found.lines, words),
  });
  const asItLies = await tried(0);
  if (asItLies.readability >= SURE) return asItLies;
  const onItsSide = viewOf(surface, 1);
  const isOnItsSide = lettersInLine(onItsSide) > CLEARLY_MORE * lettersInLine(asItLies);
  const [one, other] = isOnItsSide ? [await tried(1, onItsSide), await tried(3)] : [asItLies, await tried(2)];
  return other.readability > one.readability ? other : one;
}

type Turns = 0 | 1 | 2 | 3;

function viewOf(surface: Surface, turns: Turns): Upright {
  const view = turned(surface, turns);
  return { surface: view, found: findLines(flatGrey(view)) };
}

/** Letters that stand in lines of several. */
const lettersInLine = ({ found }: Upright): number =>
  found.lines.reduce((sum, { letters }) => sum + (letters.length >= LINE ? letters.length : 0), 0);

/** How surely the longest lines are read, 0..1. */
async function readabilityOf(surface: Surface, lines: readonly TextLine[], words: WordReader): Promise<number> {
  const letters = ({ letters: l }: TextLine) => l.length;
  const longest = [...lines].sort((a, b) => letters(b) - letters(a)).slice(0, ASKED);
  const reads = await words(
    longest.map((line) => prepare(sampleBox(surface, line), 'levelled')),
    'text',
  );
  // a long line counts more than a short one, nothing read counts as unsure
  const weight = longest.reduce((s, line) => s + letters(line), 0);
  const sure = (read: WordRead) => (read.glyphs.length ? read.confidence : 0);
  return weight ? reads.reduce((s, read, i) => s + sure(read) * letters(longest[i]!), 0) / weight : 0;
}
