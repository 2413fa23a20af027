import { middleOf } from '../../numeric/middle-of.ts';
import type { TracingTable } from '../trace/tracing-table.ts';
import { directionOf, inkIslands, type InkIsland } from './ink-islands.ts';
import { withHalo, type SheetBox } from './line-seeds.ts';
import { hideSides, printedBoxes } from './printed-boxes.ts';

/** Fewer pieces beside each other are no word: they may be markers or dashes. */
const LEAST_LETTERS = 3;
/** Letters stand closer than this share of their height. */
const LETTER_GAP = 0.7;
const SMALLEST_LETTER_PX = 5;
/** Across the word a letter spreads at least so far (standard deviation, px); a dash only as far as its line is thick. */
const LEAST_SPREAD_PX = 1.6;
const SPREAD_SHARE = 0.42;
/** A piece this many times longer than wide is a dash. */
const DASH_RATIO = 3.2;

/**
 * The table with its words, and boxes printed round them, made unknown, as grid lines are, and the bare paper around them, which interrupts a curve as
 * they do: a curve that runs behind a label is then bridged instead of following the letters.
 * @param boxes where words were read; islands in them are letters, however few
 * @param threshold ink from which on a pixel counts, 0..255
 * @param strokeWidth of the chart's lines, sheet pixels: dashes are no thicker, letters are higher
 * @returns the table, and where words stand
 */
export function hideWords(
  table: TracingTable,
  boxes: readonly SheetBox[],
  threshold: number,
  strokeWidth: number,
): { table: TracingTable; words: SheetBox[]; islands: InkIsland[] } {
  const islands = inkIslands(table, threshold);
  const letters = islands.filter(
    (i) => Math.max(i.right - i.left, i.bottom - i.top) + 1 >= SMALLEST_LETTER_PX && !isLevelDash(i),
  );
  const words = wordsOf(letters, Math.max(LEAST_SPREAD_PX, SPREAD_SHARE * strokeWidth));
  const hidden = new Set<InkIsland>(words.flat());
  for (const island of islands)
    if (isLevelDash(island)) continue;
    else if (
      boxes.some((b) => isWithin(island, b) && !isStretch(island, b)) ||
      words.some((w) => isWithin(island, boxOf(w)))
    )
      hidden.add(island);
  const places = [...boxes, ...words.map(boxOf)];
  if (!places.length) return { table, words: [], islands };
  const { width } = table.sheet;
  const data = table.grid.data.slice();
  for (const { pixels } of hidden)
    for (const i of pixels)
      for (const d of [0, -1, 1, -width, width, -width - 1, -width + 1, width - 1, width + 1]) data[i + d] = 255;
  for (const place of places) hidePaper(table, data, withHalo(place), BARE_SHARE * threshold);
  hideSides(data, width, printedBoxes(table, places, threshold));
  return {
    table: { ...table, grid: { ...table.grid, data }, likenesses: [] },
    words: places,
    islands: islands.filter((i) => !hidden.has(i)),
  };
}

/** Ink below this share of what counts is paper. */
const BARE_SHARE = 0.5;

function hidePaper({ sheet, grid }: TracingTable, data: Uint8Array, box: SheetBox, most: number): void {
  const { width, height, darkness } = sheet;
  for (let y = Math.max(0, Math.ceil(box.top)); y <= Math.min(height - 1, box.bottom); y++)
    for (let x = Math.max(0, Math.ceil(box.left)); x <= Math.min(width - 1, box.right); x++) {
      const i = y * width + x;
      if (darkness[i]! - grid.data[i]! < most) data[i] = 255;
    }
}

const heightOf = (i: InkIsland) => Math.max(i.bottom - i.top, i.right - i.left) + 1;
/** Letters have upright strokes, hardly any level one by itself: that is a dash of a line under the word. */
const isLevelDash = (i: InkIsland) => isDash(i) && i.right - i.left > 2 * (i.bottom - i.top);
const isDash = (i: InkIsland) => i.long > DASH_RATIO * Math.max(0.5, i.short);

/** A piece of a curve was taken for a part of the label that interrupts it: longer than letters that touch, and thin. */
const isStretch = (i: InkIsland, b: SheetBox) =>
  isDash(i) && i.right - i.left > LONGEST_LETTERS * Math.min(b.right - b.left, b.bottom - b.top);
const LONGEST_LETTERS = 1.5;

/** Letters of one word differ no more in size than this; a stroke longer than a letter is high is none. */
const LARGEST_LETTER = 2.4;
const LONGEST_STROKE = 1.7;

/** Islands of about one size that stand close beside each other, at least two of them no mere strokes. */
function wordsOf(letters: readonly InkIsland[], leastSpread: number): InkIsland[][] {
  const group = letters.map((_, k) => k);
  const find = (k: number): number => (group[k] === k ? k : (group[k] = find(group[k]!)));
  for (let a = 0; a < letters.length; a++)
    for (let b = a + 1; b < letters.length; b++) {
      const p = letters[a]!;
      const q = letters[b]!;
      const size = Math.max(heightOf(p), heightOf(q));
      if (isDash(p) && isDash(q)) continue;
      const longest = isDash(p) || isDash(q) ? LONGEST_STROKE : LARGEST_LETTER;
      if (size > longest * Math.min(heightOf(p), heightOf(q))) continue;
      const gapX = Math.max(p.left, q.left) - Math.min(p.right, q.right);
      const gapY = Math.max(p.top, q.top) - Math.min(p.bottom, q.bottom);
      if (Math.max(gapX, gapY) < LETTER_GAP * size) group[find(a)] = find(b);
    }
  const words = new Map<number, InkIsland[]>();
  letters.forEach((l, k) => words.set(find(k), [...(words.get(find(k)) ?? []), l]));
  return [...words.values()].filter(
    (w) => w.length >= LEAST_LETTERS && w.length <= MOST_LETTERS && isOneRow(w, leastSpread),
  );
}

const MOST_LETTERS = 60;

/** Whether letters make a line of words: it is not much higher than they are, and they are no dashes along it. */
function isOneRow(word: readonly InkIsland[], leastSpread: number): boolean {
  const x = word.map((l) => (l.left + l.right) / 2);
  const y = word.map((l) => (l.top + l.bottom) / 2);
  const mx = mean(x);
  const my = mean(y);
  const sxx = mean(x.map((v) => (v - mx) ** 2));
  const syy = mean(y.map((v) => (v - my) ** 2));
  const sxy = mean(x.map((v, k) => (v - mx) * (y[k]! - my)));
  const angle = directionOf({ xx: sxx, yy: syy, xy: sxy });
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const dashes = word.filter((l) => isDash(l) && Math.abs(Math.sin(directionOf(l.moments) - angle)) < ALONG);
  if (dashes.length > MOST_DASHES * word.length) return false;
  const across = Math.sqrt(mean(x.map((v, k) => ((y[k]! - my) * c - (v - mx) * s) ** 2)));
  const size = middleOf(word.map(heightOf));
  const spread = middleOf(
    word.map(({ moments: m }) => Math.sqrt(Math.max(0, s * s * m.xx - 2 * s * c * m.xy + c * c * m.yy))),
  );
  return across < ROWS * size && spread > leastSpread;
}

/** Two lines of words together are still words. */
const ROWS = 1.2;
/** Strokes that lie along the row they stand in (sine of the angle between) are a dashed line's, with its markers; a word has a hyphen or two. */
const ALONG = 0.4;
const MOST_DASHES = 0.2;
const mean = (values: readonly number[]) => values.reduce((s, v) => s + v, 0) / values.length;

const boxOf = (word: readonly InkIsland[]): SheetBox => ({
  left: Math.min(...word.map((l) => l.left)) - 1,
  top: Math.min(...word.map((l) => l.top)) - 1,
  right: Math.max(...word.map((l) => l.right)) + 1,
  bottom: Math.max(...word.map((l) => l.bottom)) + 1,
});

const isWithin = (i: InkIsland, b: SheetBox) =>
  i.left >= b.left - 2 && i.right <= b.right + 2 && i.top >= b.top - 2 && i.bottom <= b.bottom + 2;
