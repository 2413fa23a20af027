import type { Field } from '../crop/filters.ts';
import { inkOf, type Polarity } from '../ink/masks.ts';
import { findPieces } from '../ink/pieces.ts';
import { partRulings } from '../ink/rulings.ts';
import type { Ruling } from '../written.ts';
import { chainLetters } from './chain.ts';
import { lineOf, type TextLine } from './text-lines.ts';

/** More lines than any plate has: the rest is grain. */
const MOST_LINES = 110;
/** Lines that share more of the smaller one's area are two views of one. */
const SAME_PLACE = 0.35;

export type FoundLines = {
  readonly lines: readonly TextLine[];
  readonly rulings: readonly Ruling[];
  /** 1 where a ruling was taken out */
  readonly ruled: Uint8Array;
};

/** Finds lines of text, dark and light, and the rulings among them. @param grey a surface laid flat */
export function findLines(grey: Field): FoundLines {
  const ink = inkOf(grey);
  const ruled = new Uint8Array(grey.values.length);
  const rulings: Ruling[] = [];
  const lines: TextLine[] = [];
  for (const polarity of ['dark', 'light'] satisfies Polarity[]) {
    const parted = partRulings(ink[polarity]);
    rulings.push(...parted.rulings);
    for (let k = 0; k < ruled.length; k++) ruled[k]! |= parted.ruled[k]!;
    const pieces = findPieces(parted.ink);
    const chains = chainLetters(pieces.list, grey.height);
    lines.push(...chains.map((chain) => lineOf(chain, pieces, polarity === 'light')));
  }
  return { lines: bestApart(lines).slice(0, MOST_LINES), rulings, ruled };
}

/** Of lines in one place the one with the sharpest and most letters. */
function bestApart(lines: readonly TextLine[]): TextLine[] {
  const kept: TextLine[] = [];
  for (const line of [...lines].sort((a, b) => b.worth - a.worth))
    if (!kept.some((other) => shared(line, other) > SAME_PLACE)) kept.push(line);
  return kept;
}

function shared(a: TextLine, b: TextLine): number {
  const w = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
  const h = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  if (w <= 0 || h <= 0) return 0;
  return (w * h) / Math.min((a.x1 - a.x0) * (a.y1 - a.y0), (b.x1 - b.x0) * (b.y1 - b.y0));
}
