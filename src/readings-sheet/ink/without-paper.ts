import { fieldLike, type Field } from '../../writing/crop/filters.ts';

/** The paper's lines are looked at in pieces so long, flat pixels: no stroke of a figure covers half of one, and paper bends. */
const PIECE = 64;
/** A line this much darker than the paper's own, on average, is drawn. */
const DARKER = 1.6;

/**
 * The darkness of squared or lined paper without the paper's own lines: from each piece of a line what half of it is at least,
 * so that a stroke that crosses it keeps what it adds. @param paper darkness of the paper's lines
 */
export function withoutPaper(darkness: Field, paper: number): Field {
  const { width, height, values } = darkness;
  const own = new Float32Array(values.length);
  linesIn(1, width, width, height);
  linesIn(width, 1, height, width);
  return fieldLike(darkness, (k) => Math.max(0, values[k]! - own[k]!));

  function linesIn(along: number, across: number, length: number, breadth: number): void {
    const piece = new Float32Array(PIECE);
    for (let b = 0; b < breadth; b++)
      for (let from = 0; from < length; from += PIECE) {
        // the last piece reaches back into the one before
        const first = Math.min(from, length - PIECE);
        if (first < 0) continue;
        for (let a = 0; a < PIECE; a++) piece[a] = values[(first + a) * along + b * across]!;
        const half = piece.sort()[PIECE >> 1]!;
        if (half > DARKER * paper) continue;
        for (let a = from; a < Math.min(length, from + PIECE); a++) {
          const i = a * along + b * across;
          own[i] = Math.max(own[i]!, half);
        }
      }
  }
}
