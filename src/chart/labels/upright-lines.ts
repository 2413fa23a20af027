import type { Box } from './surroundings.ts';

/** Letters of an upright word that make its line sure. */
const SURE_LETTERS = 3;
/** Its length in widths of the line: rows of words over each other, a table for instance, are wider. */
const SURE_LENGTH = 1.7;
/** How far its next letter may stand, with a blank and a dash between them, widths of the line. */
const REACH = 2;
/** Share of a letter that lies in the line, and how far it may stick out of it, widths of the line. */
const IN_LINE = 0.6;
const STICKS_OUT = 0.35;

type Line = { x0: number; x1: number; y0: number; y1: number; letters: number };

/**
 * Letters of an upright line that were taken for the beginning or end of a level word: a title printed close beside a
 * column of numbers loses them to the numbers. They are given back where they stand in the line of a sure upright word and
 * everything else in their level word stands on one side of it.
 * @param letters boxes, y down
 * @param level,upright number of the level and of the upright word of each letter
 * @param isUpright which letters are part of upright words so far
 * @param isTitle which letters may stand in a title: those outside the frame
 * @returns the same for all letters afterwards
 */
export function uprightLetters(
  letters: readonly Box[],
  level: ArrayLike<number>,
  upright: ArrayLike<number>,
  isUpright: readonly boolean[],
  isTitle: (letter: number) => boolean,
): boolean[] {
  const out = [...isUpright];
  const lines = new Map<number, Line>();
  letters.forEach((p, i) => {
    if (out[i] && isTitle(i)) grow(lines, upright[i]!, p);
  });
  const sure = [...lines.values()].filter(isSure);
  if (!sure.length) return out;
  const words = new Map<number, number[]>();
  letters.forEach((_, i) => words.set(level[i]!, [...(words.get(level[i]!) ?? []), i]));
  for (const line of sure)
    // nearest first, so that the line grows letter by letter
    for (let found = true; found;) {
      found = false;
      for (const [i, p] of letters.entries()) {
        if (out[i] || !isTitle(i) || !goesOn(line, p)) continue;
        const others = words.get(level[i]!)!.filter((k) => !isIn(line, letters[k]!));
        const isBeside =
          others.every((k) => letters[k]!.x0 > line.x1 - 1) || others.every((k) => letters[k]!.x1 < line.x0 + 1);
        if (!isBeside) continue;
        out[i] = true;
        extend(line, p);
        found = true;
      }
    }
  return out;
}

const isSure = ({ letters, x0, x1, y0, y1 }: Line): boolean =>
  letters >= SURE_LETTERS && y1 - y0 >= SURE_LENGTH * (x1 - x0);

function grow(lines: Map<number, Line>, id: number, p: Box): void {
  const line = lines.get(id);
  if (line) {
    extend(line, p);
    line.x0 = Math.min(line.x0, p.x0);
    line.x1 = Math.max(line.x1, p.x1);
  } else lines.set(id, { x0: p.x0, x1: p.x1, y0: p.y0, y1: p.y1, letters: 1 });
}

/** Along only: what joins later lies in the line and does not widen it. */
function extend(line: Line, p: Box): void {
  line.y0 = Math.min(line.y0, p.y0);
  line.y1 = Math.max(line.y1, p.y1);
  line.letters++;
}

function isIn({ x0, x1 }: Line, p: Box): boolean {
  const slack = STICKS_OUT * (x1 - x0);
  return Math.min(x1, p.x1) - Math.max(x0, p.x0) > IN_LINE * (p.x1 - p.x0) && p.x0 > x0 - slack && p.x1 < x1 + slack;
}

const goesOn = (line: Line, p: Box): boolean =>
  isIn(line, p) && Math.max(p.y0 - line.y1, line.y0 - p.y1) < REACH * (line.x1 - line.x0);
