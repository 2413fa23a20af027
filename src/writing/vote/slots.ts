import type { Glyph, WordRead } from '../../words/word-reader.ts';

/** One reading's character at a slot; `isAfterBlank` where a blank stands before it. */
export type SeenGlyph = Glyph & { readonly isAfterBlank: boolean };

/** A place in the line where a character stands: what each pass saw there, null where it saw nothing. */
export type Slot = { x0: number; x1: number; readonly seen: (SeenGlyph | null)[] };

/** Moving a character by its own height costs as much as leaving it out twice. */
const LEAVING_OUT = 0.45;
const ANOTHER_TEXT = 0.3;
const FARTHEST = 0.75;

/**
 * Puts the characters of several readings of one crop side by side, by where they stand: the readings may be of
 * different length, and one bad character then leaves the others where they are.
 * @param capital_px height of the capitals in the crop
 * Source of the alignment: S. B. Needleman & C. D. Wunsch, J. Mol. Biol. 48 (1970) 443, one reading after the other.
 */
export function alignReads(reads: readonly WordRead[], capital_px: number): Slot[] {
  const lines = reads.map(withBlanks);
  // the surest reading first: the others are hung onto it
  const order = reads.map((_, i) => i).sort((a, b) => weightOf(reads[b]!) - weightOf(reads[a]!));
  let slots: Slot[] = [];
  for (const pass of order) slots = hang(slots, lines[pass]!, pass, reads.length, capital_px);
  return slots;
}

const weightOf = (read: WordRead) => read.confidence * Math.sqrt(read.glyphs.length);

function withBlanks(read: WordRead): SeenGlyph[] {
  let at = 0;
  return read.glyphs.map((glyph) => {
    const from = at;
    while (at < read.text.length && /\s/.test(read.text[at]!)) at++;
    const isAfterBlank = at > from;
    if (read.text.startsWith(glyph.text, at)) at += glyph.text.length;
    return { ...glyph, isAfterBlank };
  });
}

function hang(slots: Slot[], line: SeenGlyph[], pass: number, passes: number, capital: number): Slot[] {
  const [n, m] = [slots.length, line.length];
  const cost = new Float64Array((n + 1) * (m + 1));
  const way = new Uint8Array((n + 1) * (m + 1));
  for (let i = 0; i <= n; i++)
    for (let j = 0; j <= m; j++) {
      if (i === 0 && j === 0) continue;
      const k = i * (m + 1) + j;
      let [best, from] = [Infinity, 0];
      if (i > 0 && j > 0) {
        const c = cost[k - m - 2]! + unlike(slots[i - 1]!, line[j - 1]!, capital);
        if (c < best) [best, from] = [c, 0];
      }
      if (i > 0 && cost[k - m - 1]! + LEAVING_OUT < best) [best, from] = [cost[k - m - 1]! + LEAVING_OUT, 1];
      if (j > 0 && cost[k - 1]! + LEAVING_OUT < best) [best, from] = [cost[k - 1]! + LEAVING_OUT, 2];
      cost[k] = best;
      way[k] = from;
    }
  const out: Slot[] = [];
  for (let i = n, j = m; i > 0 || j > 0;) {
    const from = way[i * (m + 1) + j]!;
    if (from === 2) {
      const glyph = line[--j]!;
      const seen: (SeenGlyph | null)[] = Array.from({ length: passes }, () => null);
      seen[pass] = glyph;
      out.push({ x0: glyph.x0, x1: glyph.x1, seen });
      continue;
    }
    const slot = slots[--i]!;
    if (from === 0) slot.seen[pass] = line[--j]!;
    out.push(slot);
  }
  return out.reverse();
}

function unlike(slot: Slot, glyph: SeenGlyph, capital: number): number {
  const away = Math.abs(slot.x0 + slot.x1 - glyph.x0 - glyph.x1) / (2 * capital);
  if (away > FARTHEST) return Infinity;
  return away + (slot.seen.some((g) => g?.text === glyph.text) ? 0 : ANOTHER_TEXT);
}
