import type { ReadWord } from '../../writing/written.ts';
import { VOLTS } from '../tables/fields.ts';
import { inOneRow } from './boxes.ts';

/** Words of about one height whose gap is less than this many capital heights follow each other. */
const ROW_GAP = 2;
const MOST_HEIGHT_RATIO = 1.8;

/** Words in the order of reading: rows of print from left to right, by where they stand. */
export function inReadingOrder(words: readonly ReadWord[]): ReadWord[] {
  const sorted = words.toSorted((a, b) => a.x0 - b.x0);
  const next = new Map<ReadWord, ReadWord>();
  const isNext = new Set<ReadWord>();
  for (const word of sorted) {
    const followers = sorted.filter((other) => other !== word && !isNext.has(other) && follows(word, other));
    const nearest = followers.toSorted((a, b) => a.x0 - b.x0)[0];
    if (!nearest) continue;
    next.set(word, nearest);
    isNext.add(nearest);
  }
  const ordered: ReadWord[] = [];
  for (const first of sorted.filter((word) => !isNext.has(word)).toSorted((a, b) => a.y0 - b.y0)) {
    for (let word: ReadWord | undefined = first; word; word = next.get(word)) ordered.push(word);
  }
  return ordered.filter((word, i) => !isConnection(ordered[i - 1], word, ordered[i + 1]));
}

/** The Y of `400 / Y 690`: a sign of connection inside a list of voltages. */
function isConnection(before: ReadWord | undefined, word: ReadWord, after: ReadWord | undefined): boolean {
  if (!before || !after || !/^[AΔDYλ]$/.test(word.text) || !follows(word, after)) return false;
  return before.text.endsWith('/') && VOLTS.includes(Number.parseInt(after.text, 10));
}

function follows(a: ReadWord, b: ReadWord): boolean {
  const height = Math.max(a.capitalHeight, b.capitalHeight);
  const gap = b.x0 - a.x1;
  return (
    b.x0 > a.x0 &&
    gap < ROW_GAP * height &&
    gap > -height &&
    height < MOST_HEIGHT_RATIO * Math.min(a.capitalHeight, b.capitalHeight) &&
    inOneRow(a, b)
  );
}
