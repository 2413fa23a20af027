import type { WordRead } from '../../words/word-reader.ts';
import type { VotedGlyph } from '../written.ts';
import { blanksIn } from './ink-gaps.ts';
import { askInk, type InkWitness, type Placed } from './ink-witness.ts';
import { alignReads, type Slot } from './slots.ts';

/** Characters of one word as the readings voted, places in the crop. */
export type VotedWord = { readonly glyphs: readonly VotedGlyph[]; readonly seen: number; readonly passes: number };

const LEAST_WEIGHT = 0.02;
/** A reading that saw nothing at a place is worth this share of its confidence elsewhere. */
const NOTHING_WEIGHS = 0.8;
/** Share of the capitals' height. */
const WIDE_BLANK = 0.45;

/**
 * Votes on each character of a line by itself, never on whole strings: one that nobody can read leaves the others alone.
 * @param reads several readings of crops of the same geometry
 * @param capital_px height of the capitals in the crops
 * @param ink the pieces of ink on the line, where they are known
 * @returns the words, from left to right; characters most readings did not see are left out
 */
export function voteOnLine(reads: readonly WordRead[], capital_px: number, ink?: InkWitness): VotedWord[] {
  const useful = reads.filter((read) => read.glyphs.length > 0);
  const voted = alignReads(useful, capital_px).map((slot): Placed => ({ slot, glyph: voteOn(slot, useful) }));
  const shown = sideBySide((ink ? askInk(voted, ink, capital_px) : voted).filter(({ glyph }) => glyph.text));
  const isBlank = ink ? blanksIn(ink, capital_px) : () => false;
  // figures of one width stand apart themselves: a slender 1 does not end a number
  const isApartInInk = (before: Placed, one: Placed) =>
    !(FIGURE.test(before.glyph.text) && FIGURE.test(one.glyph.text)) && isBlank(middleOf(before), middleOf(one));
  const words: Placed[][] = [];
  shown.forEach((one, i) => {
    const word = words.at(-1);
    const before = shown[i - 1]!;
    if (!word || isApart(before, one, capital_px) || isApartInInk(before, one)) words.push([one]);
    else word.push(one);
  });
  return words.map((word) => ({
    glyphs: word.map((one) => one.glyph),
    seen: useful.filter((_, pass) => word.filter(({ slot }) => slot?.seen[pass]).length * 2 > word.length).length,
    passes: reads.length,
  }));
}

/** Readings differ in where a character ends: neighbours meet in the middle of what both would take. */
function sideBySide(shown: readonly Placed[]): Placed[] {
  const borders = shown.slice(1).map(({ glyph: { x0 } }, i) => {
    const end = shown[i]!.glyph.x1;
    return end > x0 ? { end: (end + x0) / 2, start: (end + x0) / 2 } : { end, start: x0 };
  });
  return shown.map(({ slot, glyph }, i) => ({
    slot,
    glyph: { ...glyph, x0: borders[i - 1]?.start ?? glyph.x0, x1: borders[i]?.end ?? glyph.x1 },
  }));
}

const FIGURE = /^[\d.,/-]$/;
const middleOf = ({ glyph: { x0, x1 } }: Placed) => (x0 + x1) / 2;

/** A blank, where most readings saw one; beside what only the ink shows, where it is wide. */
function isApart(before: Placed, one: Placed, capital_px: number): boolean {
  if (before.slot && one.slot) return isBlankBefore(one.slot);
  return one.glyph.x0 - before.glyph.x1 > WIDE_BLANK * capital_px;
}

function voteOn({ seen }: Slot, reads: readonly WordRead[]): VotedGlyph {
  const votes = new Map<string, number>();
  let [sum, x0, x1, places] = [0, 0, 0, 0];
  seen.forEach((glyph, pass) => {
    // one reading that is sure of its character and of its line outweighs several that guess
    const { confidence } = reads[pass]!;
    const weight = LEAST_WEIGHT + confidence * (glyph ? glyph.confidence : NOTHING_WEIGHS ** 2 * confidence);
    votes.set(glyph?.text ?? '', (votes.get(glyph?.text ?? '') ?? 0) + weight);
    sum += weight;
    if (!glyph) return;
    x0 += glyph.x0;
    x1 += glyph.x1;
    places++;
  });
  const [first, ...others] = [...votes]
    .map(([text, weight]) => ({ text, share: weight / sum }))
    .sort((a, b) => b.share - a.share);
  return { text: first!.text, share: first!.share, others, x0: x0 / places, x1: x1 / places };
}

/** More than half of the readings that saw the character saw a blank before it. */
function isBlankBefore({ seen }: Slot): boolean {
  const there = seen.filter((glyph) => glyph !== null);
  return 2 * there.filter((glyph) => glyph.isAfterBlank).length > there.length;
}
