import type { Field } from '../../writing/crop/filters.ts';
import { patchOf } from '../cells/strokes.ts';
import { NO_DIGIT, type DigitReader } from '../digits/digit-network.ts';
import type { Blot } from '../ink/blots.ts';

/** Letters or figures beside each other, in flat pixels. */
export type WrittenWord = {
  readonly blots: readonly Blot[];
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  /** middle of its tall pieces */
  readonly cy: number;
  /** tall pieces, and how likely they are figures on average, 0..1 */
  readonly letters: number;
  readonly figures: number;
};

/** Words of a sheet, the usual height of its figures [flat pixels], and how dark writing is at least. */
export type Written = { readonly words: readonly WrittenWord[]; readonly digit: number; readonly faintest: number };

/** Figures are between these heights, flat pixels: lower ones nobody could read, higher ones are headings or stains. */
const LOWEST_PX = 7;
const HIGHEST_PX = 120;
/** Slimmer than this, shares of their height, are ones as well as bits of rulings: they tell no height. */
const SLIM = 0.28;
/** Surely a figure. */
const SURE = 0.6;
/** So many are enough to know how high figures are, and so few are none. */
const FEWEST = 6;
/** Looked at by the digit reader, the largest first: beyond are specks. */
const MOST_READ = 1500;
/** Pieces of a word stand this near, figure heights, and share so much of the lower one's height. */
const BESIDE = 0.5;
const SHARED = 0.4;
/** The paper's own lines are fainter than this share of the writing's darkness. */
const FAINT = 0.5;
/** A tall piece, and the tallest and widest of a word: figure heights. */
const TALL = 0.5;
const TALLEST = 1.75;
const WIDEST = 5;

/** Finds the words among ink; null where there are no figures. @param blots those of the part that is looked at */
export function writtenWords(blots: readonly Blot[], field: Field, read: DigitReader): Written | null {
  const likely = new Map<Blot, number>();
  const candidates = blots
    .filter(({ x0, x1, y0, y1 }) => y1 - y0 >= LOWEST_PX && y1 - y0 < HIGHEST_PX && x1 - x0 < 1.6 * (y1 - y0))
    .toSorted((a, b) => b.pixels.length - a.pixels.length)
    .slice(0, MOST_READ);
  for (const blot of candidates) {
    const shares = read(patchOf({ blots: [blot], x0: blot.x0, x1: blot.x1 }, field));
    likely.set(blot, Math.max(...shares.subarray(0, NO_DIGIT)));
  }
  const sure = candidates.filter((b) => likely.get(b)! > SURE && b.x1 - b.x0 > SLIM * (b.y1 - b.y0));
  if (sure.length < FEWEST) return null;
  const middle = (of: (b: Blot) => number) => sure.map(of).sort((a, b) => a - b)[sure.length >> 1]!;
  const digit = middle(({ y0, y1 }) => y1 - y0);
  const faintest = FAINT * middle(({ level }) => level);
  const fit = blots.filter(
    ({ x0, x1, y0, y1, level }) => y1 - y0 < TALLEST * digit && x1 - x0 < WIDEST * digit && level >= faintest,
  );
  return { digit, faintest, words: chained(fit, digit).flatMap((word) => wordOf(word, digit, likely)) };
}

function wordOf(blots: readonly Blot[], digit: number, likely: ReadonlyMap<Blot, number>): WrittenWord[] {
  const tall = blots.filter(({ y0, y1 }) => y1 - y0 >= TALL * digit);
  if (!tall.length) return [];
  const mean = (of: (b: Blot) => number) => tall.reduce((sum, b) => sum + of(b), 0) / tall.length;
  return [
    {
      blots,
      x0: Math.min(...blots.map((b) => b.x0)),
      x1: Math.max(...blots.map((b) => b.x1)),
      y0: Math.min(...tall.map((b) => b.y0)),
      y1: Math.max(...tall.map((b) => b.y1)),
      cy: mean((b) => (b.y0 + b.y1) / 2),
      letters: tall.length,
      figures: mean((b) => likely.get(b) ?? 0),
    },
  ];
}

/** Groups of pieces beside each other, from left to right. */
function chained(blots: readonly Blot[], digit: number): Blot[][] {
  const words: { list: Blot[]; last: Blot[] }[] = [];
  for (const blot of blots.toSorted((a, b) => a.x0 - b.x0)) {
    const own = words.find(({ last }) =>
      last.some((b) => {
        const shared = Math.min(b.y1, blot.y1) - Math.max(b.y0, blot.y0);
        return blot.x0 - b.x1 < BESIDE * digit && shared > SHARED * Math.min(b.y1 - b.y0, blot.y1 - blot.y0);
      }),
    );
    if (!own) words.push({ list: [blot], last: [blot] });
    else {
      own.list.push(blot);
      own.last = [...own.last.filter((b) => blot.x0 - b.x1 < BESIDE * digit), blot];
    }
  }
  return words.map(({ list }) => list);
}
