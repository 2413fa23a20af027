import type { Field } from '../../writing/crop/filters.ts';
import type { TableSurface } from '../table/table-surface.ts';
import { findRulings, type Ruling } from './find-rulings.ts';
import type { TableInk } from './table-ink.ts';
import { withoutPaper } from './without-paper.ts';

/** A ruling is looked for this far from its place, in pieces this long: hand-drawn ones sway. Flat pixels. */
const REACH = 7;
const PIECE = 24;
/** A ruling covers this share of a piece at least. */
const LEAST_COVER = 0.55;

/** A ruling is seen in this share of its pieces at least; stems of figures under each other leave gaps between the rows. */
const LEAST_SEEN = 0.7;

/** A ruling may go on a little where it was not followed, flat pixels. */
const BEYOND = 48;
/** A ruling so much fainter than strokes, share of theirs, is seen through: its darkness is that of a piece with so much around. */
const FAINT = 0.65;
const AROUND = 20;
/** Two courses nearer than this are one ruling, flat pixels. */
const SAME = 7;

/**
 * The darkness without the table's rulings and the paper's own lines, strokes that cross a line whole; and the rulings that
 * were seen.
 */
export function withoutRulings(
  { darkness: seenDark, stroke, least }: TableInk,
  { xs, ys, drawn }: TableSurface,
): { readonly field: Field; readonly drawn: TableSurface['drawn'] } {
  const { width, height } = seenDark;
  const onPaper = findRulings(seenDark, least);
  const darkness = onPaper.paper > 0 ? withoutPaper(seenDark, onPaper.paper) : seenDark;
  const found = onPaper.paper > 0 ? findRulings(darkness, least).rulings : onPaper.rulings;
  const values = Float32Array.from(darkness.values);
  const known = [
    ...drawn.ys.map((at) => straight(at, true, [xs[0]!, xs.at(-1)!])),
    ...drawn.xs.map((at) => straight(at, false, [ys[0]!, ys.at(-1)!])),
  ].filter((ruling) => !found.some((f) => f.isLevel === ruling.isLevel && Math.abs(f.at - ruling.at) < SAME));
  const seen = [...found, ...known].filter(clean);
  const places = (isLevel: boolean) =>
    seen
      .filter((ruling) => ruling.isLevel === isLevel)
      .map(({ at }) => at)
      .sort((a, b) => a - b);
  return {
    field: { width, height, values },
    drawn: { xs: places(false), ys: places(true) },
  };

  /** Takes a ruling out; where it is none leaves all as it is and says so. */
  function clean(ruling: Ruling): boolean {
    const { length, ...strides } = stridesOf(ruling);
    const piecesIn = (first: number, last: number) => {
      const some: { from: number; to: number; band: [number, number] | null }[] = [];
      for (let from = Math.max(0, Math.floor(first)); from < Math.min(length, last); from += PIECE) {
        const to = Math.min(length, Math.ceil(last), from + PIECE);
        some.push({ from, to, band: bandOf(Math.round(ruling.course((from + to) / 2)), strides, from, to) });
      }
      return some;
    };
    const pieces = piecesIn(ruling.from, ruling.to);
    if (pieces.filter(({ band }) => band).length < LEAST_SEEN * pieces.length) return false;
    pieces.push(...piecesIn(ruling.from - BEYOND, ruling.from), ...piecesIn(ruling.to, ruling.to + BEYOND));
    for (const { from, to, band } of pieces) {
      if (!band) continue;
      const [first, last] = band;
      const own = Array.from({ length: last - first + 1 }, (_, k) =>
        usual(first + k, strides, Math.max(0, from - AROUND), Math.min(length, to + AROUND)),
      );
      const isFaint = Math.max(...own) < FAINT * stroke;
      for (let a = from; a < to; a++)
        if (isFaint) takeFrom(strides, a, first, own);
        else cleanAt(strides, a, first, last);
    }
    return true;
  }

  /** Darkness that half of a stretch has at a place across. */
  function usual(b: number, { along, across, breadth }: Strides, from: number, to: number): number {
    if (b < 0 || b >= breadth) return 0;
    const some = new Float32Array(to - from);
    for (let a = from; a < to; a++) some[a - from] = darkness.values[a * along + b * across]!;
    return some.sort()[some.length >> 1]!;
  }

  /** Takes a faint ruling's own darkness away: a stroke over it, along it too, keeps what it adds. */
  function takeFrom({ along, across, breadth }: Strides, a: number, first: number, own: readonly number[]): void {
    own.forEach((dark, k) => {
      const i = a * along + (first + k) * across;
      if (first + k >= 0 && first + k < breadth) values[i] = Math.max(0, values[i]! - dark);
    });
  }

  function stridesOf({ isLevel }: Ruling) {
    return isLevel
      ? { along: 1, across: width, length: width, breadth: height }
      : { along: width, across: 1, length: height, breadth: width };
  }

  /** Where the ruling runs in a piece of it: first and last place across; null where it is not seen. */
  function bandOf(
    middle: number,
    { along, across, breadth }: Strides,
    from: number,
    to: number,
  ): [number, number] | null {
    const cover = (b: number) => {
      let seen = 0;
      if (b < 0 || b >= breadth) return 0;
      for (let a = from; a < to; a++) if (darkness.values[a * along + b * across]! > 0.6 * least) seen++;
      return seen / (to - from);
    };
    let [best, most] = [middle, 0];
    for (let b = middle - REACH; b <= middle + REACH; b++) {
      const here = cover(b) - 0.01 * Math.abs(b - middle);
      if (here > most) [best, most] = [b, here];
    }
    if (most < LEAST_COVER) return null;
    let [first, last] = [best, best];
    while (best - first < 5 && cover(first - 1) > 0.45) first--;
    while (last - best < 5 && cover(last + 1) > 0.45) last++;
    return [first - 1, last + 1];
  }

  function cleanAt({ along, across, breadth }: Strides, a: number, first: number, last: number): void {
    const at = (b: number) => (b < 0 || b >= breadth ? 0 : darkness.values[a * along + b * across]!);
    const isCrossed = Math.max(at(first - 1), at(first - 2)) > least && Math.max(at(last + 1), at(last + 2)) > least;
    if (isCrossed) return;
    for (let b = Math.max(0, first); b <= Math.min(breadth - 1, last); b++) values[a * along + b * across] = 0;
  }
}

type Strides = { readonly along: number; readonly across: number; readonly breadth: number };

/** A ruling that is known to lie straight from somewhere to somewhere, its ends left uncertain. */
const straight = (at: number, isLevel: boolean, [from, to]: readonly [number, number]): Ruling => ({
  isLevel,
  from: from - REACH,
  to: to + REACH,
  at,
  course: () => at,
});
