import { stepAt } from '../table/table-surface.ts';

/** A word as far as its place matters, flat pixels. */
type Placed = { readonly text: string; readonly x0: number; readonly x1: number; readonly capitalHeight: number };
type Sides = { readonly xs: readonly number[]; readonly drawn: readonly number[] };

/** No blank between headings counts for more than this, capital heights. */
const WIDEST_BLANK = 2;
/** A column nothing stands over costs as much as so wide a blank. */
const BARE = 0.8;
/**
 * A heading may stand off its column's middle by this share of the width for nothing; further it costs, and wholly beside it
 * most.
 */
const OFF_MIDDLE = 0.25;
const OFF_COST = 1.5;
const BESIDE_COST = 2;
/** A heading may stand off its column by this share of the column's width. */
const BESIDE = 0.35;

/**
 * What a row of words says over each column. Between rulings a word belongs where it stands; else headings, which may be
 * wider than what stands under them, are parted by the widest blanks.
 * @param words from left to right
 */
export function headCells(words: readonly Placed[], { xs, drawn }: Sides): string[] {
  const inner = xs.slice(1, -1);
  const isDrawn = inner.every((x) => drawn.some((d) => Math.abs(d - x) < 1));
  const own = words.filter(
    ({ x0, x1 }) => x1 > xs[0]! - (xs[1]! - xs[0]!) && x0 < xs.at(-1)! + (xs.at(-1)! - xs.at(-2)!),
  );
  if (isDrawn) return byPlace(own, xs);
  return parted(own, xs);
}

function byPlace(words: readonly { x0: number; x1: number; text: string }[], xs: readonly number[]): string[] {
  const cells: string[][] = xs.slice(1).map(() => []);
  for (const { text, x0, x1 } of words) {
    // the outer columns reach as far out as their headings do
    const middle = Math.min(Math.max((x0 + x1) / 2, xs[0]! + 1), xs.at(-1)! - 1);
    cells[stepAt(xs, middle)]!.push(text);
  }
  return cells.map((texts) => texts.join(' '));
}

/**
 * Words parted into headings, one for each column: wide blanks between headings are good, standing off the column is bad.
 * Source: R. Bellman, Dynamic programming (1957).
 */
function parted(words: readonly Placed[], xs: readonly number[]): string[] {
  const high = words.map(({ capitalHeight }) => capitalHeight).sort((a, b) => a - b)[words.length >> 1] ?? 1;
  const blank = (i: number) => (i > 0 ? Math.min(WIDEST_BLANK, (words[i]!.x0 - words[i - 1]!.x1) / high) : 0);
  /** worth[c][i]: of the first i words over the first c columns, and where the last of them then begins */
  const worth: { sum: number; from: number }[][] = [words.map(() => ({ sum: -Infinity, from: 0 }))];
  worth[0]!.push({ sum: -Infinity, from: 0 });
  worth[0]![0] = { sum: 0, from: 0 };
  for (let c = 1; c < xs.length; c++)
    worth.push(
      Array.from({ length: words.length + 1 }, (_, to) => {
        let best = { sum: worth[c - 1]![to]!.sum - BARE, from: to };
        for (let from = 0; from < to; from++) {
          const off = offColumn(words[from]!.x0, words[to - 1]!.x1, xs[c - 1]!, xs[c]!);
          const sum = worth[c - 1]![from]!.sum + blank(from) - off;
          if (sum > best.sum) best = { sum, from };
        }
        return best;
      }),
    );
  const cells: string[] = [];
  for (let c = xs.length - 1, to = words.length; c > 0; c--) {
    const { from } = worth[c]![to]!;
    cells.unshift(
      words
        .slice(from, to)
        .map(({ text }) => text)
        .join(' '),
    );
    to = from;
  }
  return cells;
}

/** What it costs that a heading from x0 to x1 stands over a column. */
function offColumn(x0: number, x1: number, left: number, right: number): number {
  const wide = right - left;
  const off = Math.abs((x0 + x1 - left - right) / 2) / wide;
  const isBeside = x1 < left - BESIDE * wide || x0 > right + BESIDE * wide;
  return OFF_COST * Math.max(0, off - OFF_MIDDLE) + (isBeside ? BESIDE_COST : 0);
}
