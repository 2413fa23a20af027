import type { Field } from '../../writing/crop/filters.ts';
import type { TableSurface } from '../table/table-surface.ts';
import type { TableInk } from './table-ink.ts';

/** A ruling is looked for this far from its place, in pieces this long: hand-drawn ones sway. Flat pixels. */
const REACH = 7;
const PIECE = 24;
/** A ruling covers this share of a piece at least. */
const LEAST_COVER = 0.55;

/** A ruling is seen in this share of its pieces at least; stems of figures under each other leave gaps between the rows. */
const LEAST_SEEN = 0.7;

/** The darkness without the table's own rulings, strokes that cross a ruling whole; and the rulings that were seen. */
export function withoutRulings(
  { darkness, least }: TableInk,
  { xs: allXs, ys: allYs, drawn: { xs, ys } }: TableSurface,
): { readonly field: Field; readonly drawn: TableSurface['drawn'] } {
  const { width, height } = darkness;
  const values = Float32Array.from(darkness.values);
  const [left, right] = [allXs[0]! - REACH, allXs[allXs.length - 1]! + REACH];
  const [top, bottom] = [allYs[0]! - REACH, allYs[allYs.length - 1]! + REACH];
  const level = { from: left, to: right, along: 1, across: width, length: width, breadth: height };
  const upright = { from: top, to: bottom, along: width, across: 1, length: height, breadth: width };
  const drawn = { xs: xs.filter((at) => clean({ at, ...upright })), ys: ys.filter((at) => clean({ at, ...level })) };
  return { field: { width, height, values }, drawn };

  /** Takes a ruling out; where it is none leaves all as it is and says so. */
  function clean(ruling: Ruling): boolean {
    const pieces: { from: number; to: number; band: [number, number] | null }[] = [];
    for (let from = Math.max(0, Math.floor(ruling.from)); from < Math.min(ruling.length, ruling.to); from += PIECE) {
      const to = Math.min(ruling.length, Math.ceil(ruling.to), from + PIECE);
      pieces.push({ from, to, band: bandOf(ruling, from, to) });
    }
    if (pieces.filter(({ band }) => band).length < LEAST_SEEN * pieces.length) return false;
    for (const { from, to, band } of pieces) if (band) for (let a = from; a < to; a++) cleanAt(ruling, a, ...band);
    return true;
  }

  /** Where the ruling runs in a piece of it: first and last place across; null where it is not seen. */
  function bandOf({ at, along, across, breadth }: Ruling, from: number, to: number): [number, number] | null {
    const middle = Math.round(at);
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

  function cleanAt({ along, across, breadth }: Ruling, a: number, first: number, last: number): void {
    const at = (b: number) => (b < 0 || b >= breadth ? 0 : darkness.values[a * along + b * across]!);
    const isCrossed = Math.max(at(first - 1), at(first - 2)) > least && Math.max(at(last + 1), at(last + 2)) > least;
    if (isCrossed) return;
    for (let b = Math.max(0, first); b <= Math.min(breadth - 1, last); b++) values[a * along + b * across] = 0;
  }
}

type Ruling = { at: number; from: number; to: number; along: number; across: number; length: number; breadth: number };
