import type { Piece } from '../ink/pieces.ts';
import type { Chain } from './chain.ts';

/** A point or comma between two figures stands no farther from either, and they no farther apart, shares of their height. */
const FARTHEST = 0.8;
const WIDEST = 1.6;
/** Its size, and how far from the base line its top may be. */
const LARGEST = 0.5;
const ABOVE_BASE = 0.45;
/** Dots that follow each other closer than this are leaders. */
const LEADERS = 1.1;
const ALIKE = { height: 1.25, base: 0.2 };

const highOf = ({ letters }: Chain) => Math.max(...letters.map((p) => p.y1 - p.y0));
const baseOf = (p: Piece) => p.y1;

/**
 * Joins two pieces of one number that stand far from the comma between them, as figures of one width do: `0 , 31`.
 * @param marks pieces of ink that may be points: small ones, and those that stand alone
 */
export function joinedAcross(chains: readonly Chain[], marks: readonly Piece[]): Chain[] {
  let out = [...chains];
  for (const mark of marks) {
    const others = out.filter(({ letters }) => letters.length > 1 || letters[0] !== mark);
    const before = nearest(others, mark, -1);
    const after = nearest(others, mark, 1);
    if (!before || !after || before.chain === after.chain) continue;
    const high = highOf(before.chain);
    const other = highOf(after.chain);
    const isAlike = Math.max(high, other) < ALIKE.height * Math.min(high, other);
    const isLevel = Math.abs(baseOf(before.letter) - baseOf(after.letter)) < ALIKE.base * high;
    const isTight = after.letter.x0 - before.letter.x1 < WIDEST * high;
    if (!isAlike || !isLevel || !isTight || !isPoint(mark, before.letter, high) || isLeader(mark, marks, high))
      continue;
    const whole = {
      letters: [...before.chain.letters, ...after.chain.letters].sort((a, b) => a.x0 - b.x0),
      marks: [...new Set([...before.chain.marks, mark, ...after.chain.marks])],
    };
    out = others.flatMap((chain) => (chain === before.chain ? [whole] : chain === after.chain ? [] : [chain]));
  }
  return out;
}

function nearest(chains: readonly Chain[], mark: Piece, side: 1 | -1): { chain: Chain; letter: Piece } | null {
  const gapOf = (p: Piece) => (side > 0 ? p.x0 - mark.x1 : mark.x0 - p.x1);
  const near = chains.flatMap((chain) => {
    const letter = side > 0 ? chain.letters[0]! : chain.letters.at(-1)!;
    const high = letter.y1 - letter.y0;
    const isBeside = mark.y0 > letter.y0 && mark.y0 < letter.y1;
    return isBeside && gapOf(letter) > -0.2 * high && gapOf(letter) < FARTHEST * high ? [{ chain, letter }] : [];
  });
  return near.sort((a, b) => gapOf(a.letter) - gapOf(b.letter))[0] ?? null;
}

const sizeOf = (p: Piece) => Math.max(p.x1 - p.x0, p.y1 - p.y0);
const isPoint = (mark: Piece, letter: Piece, high: number) =>
  sizeOf(mark) < LARGEST * high &&
  mark.y0 > baseOf(letter) - ABOVE_BASE * high &&
  mark.y1 > baseOf(letter) - 0.1 * high;

const isLeader = (mark: Piece, marks: readonly Piece[], high: number) =>
  marks.some(
    (other) =>
      other !== mark &&
      Math.abs(other.y1 - mark.y1) < 0.2 * high &&
      Math.max(other.x0 - mark.x1, mark.x0 - other.x1) < LEADERS * high &&
      sizeOf(other) < LARGEST * high,
  );
