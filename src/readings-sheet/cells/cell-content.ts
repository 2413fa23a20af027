import type { Field } from '../../writing/crop/filters.ts';
import { NO_DIGIT, type DigitReader } from '../digits/digit-network.ts';
import type { Blot } from '../ink/blots.ts';
import { patchOf } from './strokes.ts';

/**
 * What a cell holds: the ink of its number, whatever was struck out left aside (`isOne`: nothing else is left); a mark for
 * the value above; or nothing (`isBare`: not even a stroke).
 */
export type CellContent =
  | { readonly kind: 'number'; readonly blots: readonly Blot[]; readonly isOne: boolean }
  | { readonly kind: 'ditto'; readonly isSure: boolean }
  | { readonly kind: 'empty'; readonly isBare: boolean };

/** Heights in usual digit heights: a digit is at least so high, a ditto's stroke between these. */
const LEAST_DIGIT = 0.5;
const SPECK = 0.3;
const DITTO = { least: 0.13, most: 0.62, wide: 0.45, slim: 0.34 };
/** Groups of ink this far apart are two values. */
const APART = 0.32;
/** So far apart they are certainly two, and only one of them can be meant. */
const ANOTHER = 1;
const gap = (a: readonly Blot[], b: readonly Blot[]): number =>
  Math.min(...b.map(({ x0 }) => x0)) - Math.max(...a.map(({ x1 }) => x1));

/** Says what a cell's ink is, before its digits are read. @param digit usual height of a digit, flat pixels */
export function cellContent(blots: readonly Blot[], field: Field, digit: number, read: DigitReader): CellContent {
  const tall = blots.filter(({ y0, y1 }) => y1 - y0 >= LEAST_DIGIT * digit);
  const isBare = !blots.some(({ x0, x1, y0, y1 }) => Math.max(x1 - x0, y1 - y0) > SPECK * digit);
  if (!tall.length) return dittoOf(blots, field, digit, read) ?? { kind: 'empty', isBare };
  // two short strokes by themselves are no eleven: figures are higher
  if (tall.every(({ y0, y1 }) => y1 - y0 <= DITTO.most * digit)) {
    const ditto = dittoOf(blots, field, digit, read);
    if (ditto?.kind === 'ditto' && ditto.isSure) return ditto;
  }
  const groups = groupsOf(blots, digit).filter((group) => group.some((b) => b.y1 - b.y0 >= LEAST_DIGIT * digit));
  const valid = groups.filter((group) => !isStruck(group, field, digit, read));
  if (!valid.length) return { kind: 'number', blots, isOne: false };
  return {
    kind: 'number',
    blots: valid.flat(),
    isOne: !valid.slice(1).some((group, i) => gap(valid[i]!, group) > ANOTHER * digit),
  };
}

/**
 * Two short upright strokes of one height beside each other, a dash each side of them or not. They may have run into one,
 * and then it is a guess. A dash alone says that nothing was measured.
 */
function dittoOf(blots: readonly Blot[], field: Field, digit: number, read: DigitReader): CellContent | null {
  const strokes = blots.filter(({ x0, x1, y0, y1 }) => {
    const [wide, high] = [(x1 - x0) / digit, (y1 - y0) / digit];
    return high >= DITTO.least && high <= DITTO.most && wide <= DITTO.wide && high > 0.6 * wide;
  });
  if (!strokes.length || strokes.length > 2) return null;
  const [x0, x1] = [Math.min(...strokes.map((b) => b.x0)), Math.max(...strokes.map((b) => b.x1))];
  const [a, b] = strokes as [Blot, Blot?];
  if (b && (x1 - x0 > 0.9 * digit || Math.abs(a.cy - b.cy) > 0.25 * digit)) return null;
  const likeness = b ? (a.y1 - a.y0) / (b.y1 - b.y0) : 0;
  const isPair = likeness > 0.6 && likeness < 1.7 && strokes.every(({ x0, x1 }) => x1 - x0 <= DITTO.slim * digit);
  if (!isPair && read(patchOf({ blots: strokes, x0, x1 }, field))[NO_DIGIT]! < 0.3) return null;
  return { kind: 'ditto', isSure: likeness > 0.6 && likeness < 1.7 };
}

function groupsOf(blots: readonly Blot[], digit: number): Blot[][] {
  const groups: Blot[][] = [];
  let reached = -Infinity;
  for (const b of blots.toSorted((a, b) => a.x0 - b.x0)) {
    if (b.x0 - reached > APART * digit || !groups.length) groups.push([]);
    groups.at(-1)!.push(b);
    reached = Math.max(reached, b.x1);
  }
  return groups;
}

/** A line that strikes out runs over nearly the whole value, and this wide at least. */
const COVERED = 0.93;
const LEAST_STRIKE = 0.75;

/** Whether one straight stroke goes through all of a group, and its digits cannot be read for it. */
function isStruck(group: readonly Blot[], field: Field, digit: number, read: DigitReader): boolean {
  const [x0, x1] = [Math.min(...group.map((b) => b.x0)), Math.max(...group.map((b) => b.x1))];
  const [y0, y1] = [Math.min(...group.map((b) => b.y0)), Math.max(...group.map((b) => b.y1))];
  const wide = x1 - x0;
  if (wide < LEAST_STRIKE * digit) return false;
  const main = group.reduce((a, b) => (b.x1 - b.x0 > a.x1 - a.x0 ? b : a));
  if (main.x1 - main.x0 < 0.85 * wide) return false;
  if (lineCover(main, field.width, (y0 + y1) / 2, 0.3 * (y1 - y0), Math.max(1, 0.05 * digit)) < COVERED) return false;
  return read(patchOf({ blots: group, x0, x1 }, field))[NO_DIGIT]! > 0.4;
}

/** The greatest share of a blot's width one straight line through its middle runs in ink. @param half of the line's height */
function lineCover({ x0, x1, pixels }: Blot, width: number, middle: number, reach: number, half: number): number {
  const columns = Array.from({ length: x1 - x0 }, () => [] as number[]);
  for (const at of pixels) columns[(at % width) - x0]!.push(Math.floor(at / width));
  let best = 0;
  for (let slope = -0.6; slope <= 0.6; slope += 0.05)
    for (let off = -reach; off <= reach; off += half) {
      let seen = 0;
      columns.forEach((ys, i) => {
        const y = middle + off + slope * (i - columns.length / 2);
        if (ys.some((v) => Math.abs(v - y) <= half)) seen++;
      });
      best = Math.max(best, seen / columns.length);
    }
  return best;
}
