import type { WrittenWord } from './written-words.ts';

/** Words on one height, from left to right. `y` is the height of their middles. */
export type TextRow = { readonly y: number; readonly words: readonly WrittenWord[] };

/** Text may lean by this tangent after a photo was laid flat; finer than the step nobody sees. */
const STEEPEST = 0.06;
const STEP = 0.002;
/** Heights are told apart this finely, figure heights. */
const BIN = 0.2;

/**
 * By which tangent rows of words fall to the right: where they come to lie on fewest heights.
 * Source: W. Postl, Detection of linear oblique structures and skew scan in digitized documents, ICPR (1986).
 */
export function leanOfRows(words: readonly WrittenWord[], digit: number): number {
  let [best, most] = [0, -Infinity];
  for (let k = -Math.round(STEEPEST / STEP); k <= STEEPEST / STEP; k++) {
    const counts = new Map<number, number>();
    for (const { x0, x1, cy } of words) {
      const at = (cy - k * STEP * ((x0 + x1) / 2)) / (BIN * digit);
      const bin = Math.floor(at);
      const share = at - bin;
      counts.set(bin, (counts.get(bin) ?? 0) + 1 - share);
      counts.set(bin + 1, (counts.get(bin + 1) ?? 0) + share);
    }
    let worth = -Math.abs(k) * 1e-3;
    for (const [bin, count] of counts) worth += (count + 0.5 * (counts.get(bin + 1) ?? 0)) ** 2;
    if (worth > most) [best, most] = [k * STEP, worth];
  }
  return best;
}

/** Words whose middles are no further than this from their row's belong to it, figure heights. */
const REACH = 0.62;

/** Rows of words from the top down. */
export function textRows(words: readonly WrittenWord[], digit: number): TextRow[] {
  const rows: { sum: number; count: number; words: WrittenWord[] }[] = [];
  for (const word of words.toSorted((a, b) => a.cy - b.cy)) {
    const last = rows.at(-1);
    // long words tell the height of a row better than a speck
    const weight = Math.min(4, word.letters);
    if (last && word.cy - last.sum / last.count < REACH * digit) {
      last.words.push(word);
      last.sum += weight * word.cy;
      last.count += weight;
    } else rows.push({ sum: weight * word.cy, count: weight, words: [word] });
  }
  return rows.map(({ sum, count, words }) => ({ y: sum / count, words: words.sort((a, b) => a.x0 - b.x0) }));
}
