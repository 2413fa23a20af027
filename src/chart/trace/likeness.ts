import type { GridInk } from '../grid/grid-ink.ts';
import type { Sheet } from '../sheet.ts';

/** A curve's own ink at the middle of its stroke, per channel, 0..255. */
export type InkColour = readonly [number, number, number];

/**
 * How much each pixel looks like a curve's ink: 0 not at all, 100 like the middle of its stroke.
 * `hidden` marks pixels that can't tell: the grid there is as dark as the curve.
 */
export type Likeness = {
  readonly width: number;
  readonly height: number;
  readonly like: Uint8Array;
  readonly hidden: Uint8Array;
};

/** Ink of another colour than the curve's does not count, however dark; nor does what the grid laid down. */
export function likenessTo(sheet: Sheet, grid: GridInk, colour: InkColour, spread: number): Likeness {
  const near = Math.min(LOOSE_COLOUR, spread);
  const far = FAR * near;
  const [cr, cg, cb] = colour;
  const square = cr * cr + cg * cg + cb * cb;
  const own = (cr + cg + cb) / 3;
  const n = sheet.width * sheet.height;
  const like = new Uint8Array(n);
  const hidden = new Uint8Array(n);
  const { ink } = sheet;
  // bare paper, most of a sheet, is passed over at a glance: no channel there has enough ink
  const least = (LEAST_LIKE * square) / (cr + cg + cb);
  for (let i = 0, j = 0; i < n; i++, j += 3) {
    const laid = grid.data[i]! / own;
    // bare paper around a word tells no more than the word does
    if (laid > HIDING) {
      hidden[i] = 1;
      continue;
    }
    const r = ink[j]!;
    const g = ink[j + 1]!;
    const b = ink[j + 2]!;
    if (r < least && g < least && b < least) continue;
    let amount = (r * cr + g * cg + b * cb) / square;
    if (amount < LEAST_LIKE) continue;
    const dr = r - amount * cr;
    const dg = g - amount * cg;
    const db = b - amount * cb;
    const off = (dr * dr + dg * dg + db * db) / square;
    if (off > near) amount *= off > far ? 0 : (far - off) / (far - near);
    if (laid > 0.04) amount = (amount - laid) / (1 - laid);
    if (amount > 0) like[i] = amount >= 1.2 ? 120 : 100 * amount;
  }
  return { width: sheet.width, height: sheet.height, like, hidden };
}

const LEAST_LIKE = 0.06;
/** A grid this share as dark as the curve hides it. */
const HIDING = 0.75;

/** Squared distance in colour, against the curve's own ink, within which any ink might be the curve's. */
export const LOOSE_COLOUR = 0.04;
const TIGHTEST_COLOUR = 0.012;
/** Ink this many times further off than what counts fully does not count at all. */
const FAR = 3.2;

/**
 * How far a curve's ink strays in colour along a way that was followed: noise, JPEG and blur, not other inks.
 * @returns squared distance against the ink itself, to be given to `likenessTo`
 */
export function colourSpread(
  sheet: Sheet,
  steps: readonly { x: number; y: number; quality: number }[],
  colour: InkColour,
): number {
  const [cr, cg, cb] = colour;
  const square = cr * cr + cg * cg + cb * cb;
  const offs: number[] = [];
  for (const { x, y, quality } of steps) {
    if (quality < 0.6) continue;
    const j = 3 * (Math.round(y) * sheet.width + Math.round(x));
    const [r, g, b] = [sheet.ink[j]!, sheet.ink[j + 1]!, sheet.ink[j + 2]!];
    const amount = (r * cr + g * cg + b * cb) / square;
    offs.push(((r - amount * cr) ** 2 + (g - amount * cg) ** 2 + (b - amount * cb) ** 2) / square);
  }
  if (offs.length < 8) return LOOSE_COLOUR;
  offs.sort((a, b) => a - b);
  return Math.min(LOOSE_COLOUR, Math.max(TIGHTEST_COLOUR, 2.5 * offs[Math.floor(offs.length * 0.8)]!));
}

/** Likeness 0..1.2 between pixels, bilinear; 0 outside the sheet. */
export function likeAt({ width, height, like }: Likeness, x: number, y: number): number {
  if (!(x >= 0 && y >= 0 && x < width - 1 && y < height - 1)) return 0;
  const ix = x | 0;
  const iy = y | 0;
  const fx = x - ix;
  const fy = y - iy;
  const i = iy * width + ix;
  const top = like[i]! + (like[i + 1]! - like[i]!) * fx;
  const bottom = like[i + width]! + (like[i + width + 1]! - like[i + width]!) * fx;
  return (top + (bottom - top) * fy) / 100;
}

/** Whether a place on the sheet [px] is covered: glare, a label, the edge of the paper. Outside the sheet nothing is. */
export function hiddenAt({ width, height, hidden }: Likeness, x: number, y: number): boolean {
  const ix = Math.round(x);
  const iy = Math.round(y);
  return ix >= 0 && iy >= 0 && ix < width && iy < height && hidden[iy * width + ix] === 1;
}
