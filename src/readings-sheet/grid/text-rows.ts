import type { WrittenWord } from './written-words.ts';

/** Words on one height, from left to right. `y` is the height of their middles. */
export type TextRow = { readonly y: number; readonly words: readonly WrittenWord[] };

/** Text may lean by this tangent after a photo was laid flat; finer than the step nobody sees. */
const STEEPEST = 0.06;
const STEP = 0.002;
/** Words within about this, figure heights, are on one height. */
const APART = 0.12;
/** So many words tell the lean as well as all. */
const ENOUGH = 240;

/**
 * By which tangent rows of words fall to the right: that by which most pairs of words come to lie on one height.
 * Source: W. Postl, Detection of linear oblique structures and skew scan in digitized documents, ICPR (1986).
 */
export function leanOfRows(words: readonly WrittenWord[], digit: number): number {
  const every = Math.ceil(words.length / ENOUGH);
  const places = words.filter((_, i) => i % every === 0).map(({ x0, x1, cy }) => [(x0 + x1) / 2, cy] as const);
  const reach = APART * digit;
  let [best, most] = [0, -Infinity];
  for (let k = -Math.round(STEEPEST / STEP); k <= STEEPEST / STEP; k++) {
    const level = places.map(([x, y]) => y - k * STEP * x).sort((a, b) => a - b);
    let worth = -1e-6 * Math.abs(k);
    level.forEach((y, i) => {
      for (let j = i + 1; j < level.length && level[j]! - y < 3 * reach; j++)
        worth += Math.exp(-(((level[j]! - y) / reach) ** 2));
    });
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
