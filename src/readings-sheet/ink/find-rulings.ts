import type { Field } from '../../writing/crop/filters.ts';

/** A drawn line that is nearly level or nearly upright: where it runs across, place by place along. Flat pixels. */
export type Ruling = {
  readonly isLevel: boolean;
  readonly from: number;
  readonly to: number;
  /** across, on average and at a place along */
  readonly at: number;
  readonly course: (along: number) => number;
};

/** Dark for so long without a break is no figure and no letter, flat pixels. */
const PIECE = 48;
const LEAST_COVER = 0.9;
/** From piece to piece a line strays no further than this, and may be lost in so many: by a figure, a fold. */
const STRAY = 4;
const LOST = 2;
/** A ruling runs on for this share of the sheet, and is seen in so much of it. */
const LONG = 0.3;
const SEEN = 0.7;
/** Wider than this is no line but a shadow. */
const WIDEST = 9;

/** Long lines in ink: rulings, folds, the paper's own where they are dark. @param least darkness of ink */
export function findRulings(darkness: Field, least: number): Ruling[] {
  return [true, false].flatMap((isLevel) => linesAlong(darkness, 0.6 * least, isLevel));
}

type Mark = { readonly piece: number; readonly across: number };

function linesAlong({ width, height, values }: Field, dark: number, isLevel: boolean): Ruling[] {
  const [length, breadth] = isLevel ? [width, height] : [height, width];
  const [along, across] = isLevel ? [1, width] : [width, 1];
  const pieces = Math.floor(length / PIECE);
  const chains: Mark[][] = [];
  for (let piece = 0; piece < pieces; piece++)
    for (const at of marksIn(piece)) {
      const own = chains
        .filter((chain) => piece - chain.at(-1)!.piece <= LOST + 1 && chain.at(-1)!.piece < piece)
        .map((chain) => ({ chain, off: Math.abs(chain.at(-1)!.across - at) / (piece - chain.at(-1)!.piece) }))
        .filter(({ off }) => off <= STRAY)
        .sort((a, b) => a.off - b.off)[0];
      if (own) own.chain.push({ piece, across: at });
      else chains.push([{ piece, across: at }]);
    }
  return chains.filter((chain) => isRuling(chain, pieces)).map((chain) => rulingOf(chain, isLevel));

  /** Where lines cross a piece of the sheet: middles of what is dark all along it. */
  function marksIn(piece: number): number[] {
    const cover = new Float32Array(breadth);
    for (let b = 1; b < breadth - 1; b++) {
      let seen = 0;
      for (let a = piece * PIECE; a < (piece + 1) * PIECE; a++) {
        const i = a * along + b * across;
        if (Math.max(values[i]!, values[i - across]!, values[i + across]!) > dark) seen++;
      }
      cover[b] = seen / PIECE;
    }
    const marks: number[] = [];
    for (let b = 0; b < breadth; b++) {
      if (cover[b]! < LEAST_COVER) continue;
      const first = b;
      while (cover[b + 1]! >= LEAST_COVER) b++;
      if (b - first < WIDEST) marks.push((first + b) / 2);
    }
    return marks;
  }
}

function isRuling(chain: readonly Mark[], pieces: number): boolean {
  const span = chain.at(-1)!.piece - chain[0]!.piece + 1;
  return span >= LONG * pieces && chain.length >= SEEN * span;
}

function rulingOf(chain: readonly Mark[], isLevel: boolean): Ruling {
  const middle = ({ piece }: Mark) => (piece + 0.5) * PIECE;
  return {
    isLevel,
    from: chain[0]!.piece * PIECE,
    to: (chain.at(-1)!.piece + 1) * PIECE,
    at: chain.reduce((sum, { across }) => sum + across, 0) / chain.length,
    course: (along) => {
      const next = chain.findIndex((mark) => middle(mark) > along);
      if (next === 0) return chain[0]!.across;
      if (next < 0) return chain.at(-1)!.across;
      const [a, b] = [chain[next - 1]!, chain[next]!];
      return a.across + ((along - middle(a)) / (middle(b) - middle(a))) * (b.across - a.across);
    },
  };
}
