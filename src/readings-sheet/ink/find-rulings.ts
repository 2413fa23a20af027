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
/** A line is followed where it is darker than this share of what is ink, and has fewer neighbours than this. */
const DARK = 0.6;
const MOST = 24;
/** So many lines each way, as far apart one way as the other (logarithm of the ratio), are squared paper. */
const SQUARES = 8;
const SQUARE = 0.15;
/** A ruling is so much darker than the lines of the paper it was drawn on. */
const DARKER = 1.35;
/** From piece to piece a line strays no further than this, and may be lost in so many: by a figure, a fold. */
const STRAY = 4;
const LOST = 2;
/** A ruling runs on for this share of the sheet, and is seen in so much of it. */
const LONG = 0.3;
const SEEN = 0.7;
/** Wider than this is no line but a shadow. */
const WIDEST = 9;

/**
 * Long lines in ink: rulings and folds; and how dark the paper's own lines are, 0 where it has none.
 * @param least darkness of ink
 */
export function findRulings(darkness: Field, least: number): { rulings: Ruling[]; paper: number } {
  const [level, upright] = [true, false].map((isLevel) => linesAlong(darkness, DARK * least, isLevel)) as [
    Line[],
    Line[],
  ];
  const paper = paperIn(level, upright);
  const rulingsIn = (lines: readonly Line[], isLevel: boolean) =>
    lines.filter((line) => line.dark > DARKER * paper).map(({ chain }) => rulingOf(chain, isLevel));
  return { rulings: [...rulingsIn(level, true), ...rulingsIn(upright, false)], paper };
}

/**
 * How dark the paper's own lines are: there are more of them than any table has, or they make squares, which no table's rows
 * and columns do.
 */
function paperIn(level: readonly Line[], upright: readonly Line[]): number {
  const ways = [level, upright];
  const isSquared =
    ways.every(({ length }) => length >= SQUARES) && Math.abs(Math.log(gapOf(level) / gapOf(upright))) < SQUARE;
  const lined = ways.filter(({ length }) => isSquared || length > MOST);
  return Math.max(0, ...lined.map((lines) => middleOf(lines.map(({ dark }) => dark))));
}

/** Usual distance from line to line. */
function gapOf(lines: readonly Line[]): number {
  const places = lines.map(({ chain }) => placeOf(chain)).sort((a, b) => a - b);
  return middleOf(places.slice(1).map((at, i) => at - places[i]!));
}

const placeOf = (chain: readonly Mark[]): number => chain.reduce((sum, { across }) => sum + across, 0) / chain.length;

/** A line as it was followed, and its darkness. */
type Line = { readonly chain: readonly Mark[]; readonly dark: number };

type Mark = { readonly piece: number; readonly across: number };

function linesAlong({ width, height, values }: Field, dark: number, isLevel: boolean): Line[] {
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
  return chains.filter((chain) => isRuling(chain, pieces)).map((chain) => ({ chain, dark: darknessOf(chain) }));

  /** Mean darkness of a line where it was seen. */
  function darknessOf(chain: readonly Mark[]): number {
    let sum = 0;
    for (const { piece, across: at } of chain)
      for (let a = piece * PIECE; a < (piece + 1) * PIECE; a++) {
        const i = a * along + Math.round(at) * across;
        sum += Math.max(values[i]!, values[i - across] ?? 0, values[i + across] ?? 0);
      }
    return sum / (chain.length * PIECE);
  }

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
    at: placeOf(chain),
    course: (along) => {
      const next = chain.findIndex((mark) => middle(mark) > along);
      if (next === 0) return chain[0]!.across;
      if (next < 0) return chain.at(-1)!.across;
      const [a, b] = [chain[next - 1]!, chain[next]!];
      return a.across + ((along - middle(a)) / (middle(b) - middle(a))) * (b.across - a.across);
    },
  };
}

const middleOf = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[list.length >> 1]!;
