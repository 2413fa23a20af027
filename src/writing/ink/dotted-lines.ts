import type { Ruling } from '../written.ts';
import type { Piece } from './pieces.ts';

/** A dot is small and about round; no letter is. */
const LARGEST_PX = 16;
const ROUND = 2;
/** So many dots in a row are no points of numbers. */
const FEWEST = 6;
/** From one dot to the next, shares of their size; alike in size; at one height. */
const STEP = { least: 1, most: 4.5 };
const ALIKE = 1.7;
const LEVEL = 0.5;
/** Steps along one line differ by no more than this. */
const EVEN = 1.35;

/** A row of dots: the pieces, and the line they make. */
export type DottedLine = { readonly dots: readonly Piece[]; readonly ruling: Ruling };

/** Finds leaders and dotted lines to write on: dots in an even row, which belong to no number above them. */
export function dottedLines(pieces: readonly Piece[]): DottedLine[] {
  const dots = pieces.filter(isDot).sort((a, b) => a.x0 - b.x0);
  const taken = new Set<Piece>();
  return dots.flatMap((first, i): DottedLine[] => {
    if (taken.has(first)) return [];
    const row = rowFrom(dots, i, taken);
    if (row.length < FEWEST) return [];
    row.forEach((dot) => taken.add(dot));
    const [a, b] = [row[0]!, row.at(-1)!];
    return [{ dots: row, ruling: { x0: a.x0, y0: middle(a), x1: b.x1, y1: middle(b) } }];
  });
}

const sizeOf = ({ x0, y0, x1, y1 }: Piece) => Math.max(x1 - x0, y1 - y0);
const middle = ({ y0, y1 }: Piece) => (y0 + y1) / 2;
const across = ({ x0, x1 }: Piece) => (x0 + x1) / 2;

function isDot(piece: Piece): boolean {
  const [w, h] = [piece.x1 - piece.x0, piece.y1 - piece.y0];
  return sizeOf(piece) <= LARGEST_PX && Math.max(w, h) <= ROUND * Math.min(w, h);
}

/** The row that goes on from a dot, each time to the nearest one ahead; a hole of one dot is passed over. */
function rowFrom(dots: readonly Piece[], start: number, taken: ReadonlySet<Piece>): Piece[] {
  const row = [dots[start]!];
  for (let i = start + 1; i < dots.length; i++) {
    const last = row.at(-1)!;
    const next = dots[i]!;
    const size = Math.max(sizeOf(last), sizeOf(next));
    const step = across(next) - across(last);
    if (step > STEP.most * size) break;
    if (taken.has(next) || step < STEP.least * size || size > ALIKE * Math.min(sizeOf(last), sizeOf(next))) continue;
    if (Math.abs(middle(next) - middle(last)) > LEVEL * size) continue;
    const usual = row.length > 2 ? (across(last) - across(row[0]!)) / (row.length - 1) : step;
    if (step > EVEN * usual || step < usual / EVEN) continue;
    row.push(next);
  }
  return row;
}
