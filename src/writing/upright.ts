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

/** A surface the way one reads it, and the lines on it. */
export type Upright = { readonly surface: Surface; readonly found: FoundLines };

/** Turns a surface so that its text can be read: as it lies, upside down, on its sides, the first that reads well. */
export async function turnUpright(surface: Surface, words: WordReader): Promise<Upright> {
  let best: (Upright & { readability: number }) | null = null;
  for (const turns of [0, 2, 1, 3] as const) {
    const view = turned(surface, turns);
    const found = findLines(flatGrey(view));
    const readability = await readabilityOf(view, found.lines, words);
    if (!best || readability > best.readability) best = { surface: view, found, readability };
    if (best.readability >= SURE) break;
  }
  return best!;
}

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
