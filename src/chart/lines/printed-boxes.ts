import type { TracingTable } from '../trace/tracing-table.ts';
import { isIn, type SheetBox } from './line-seeds.ts';

/** A printed side is inked on so much of its length, to within so many pixels of straight. */
const PRINTED = 0.93;
const WAVER_PX = 2;
/** Sides tried in each direction, from the word outwards: the stems of other words come first. */
const MOST_SIDES = 6;
/** A box round a word is no larger than this share of the frame, either way. */
const LARGEST = 0.5;
const CLEAR_OF_WORD_PX = 2;

/**
 * Boxes printed round words in the plot, a legend's for instance: their sides are no curves, and a curve that ends on
 * one is not to go on along it.
 * @param words where words stand, sheet pixels
 * @param threshold ink from which on a pixel counts, 0..255
 */
export function printedBoxes(table: TracingTable, words: readonly SheetBox[], threshold: number): SheetBox[] {
  const found: SheetBox[] = [];
  for (const word of words) {
    const isKnown = found.some((b) => isIn(b, (word.left + word.right) / 2, (word.top + word.bottom) / 2));
    const box = isKnown ? null : boxAround(table, word, threshold);
    if (box) found.push(box);
  }
  return found;
}

function boxAround({ sheet, grid, bounds }: TracingTable, word: SheetBox, threshold: number): SheetBox | null {
  const { width, darkness } = sheet;
  const isInk = (x: number, y: number): boolean => darkness[y * width + x]! - grid.data[y * width + x]! > threshold;
  const share = (from: number, to: number, isInkAt: (along: number, off: number) => boolean): number => {
    let inked = 0;
    for (let v = from; v <= to; v++)
      for (let off = -WAVER_PX; off <= WAVER_PX; off++)
        if (isInkAt(v, off)) {
          inked++;
          break;
        }
    return inked / Math.max(1, to - from + 1);
  };
  const level = (y: number, from: number, to: number) => share(from, to, (x, off) => isInk(x, y + off));
  const upright = (x: number, from: number, to: number) => share(from, to, (y, off) => isInk(x + off, y));
  const [left, right, top, bottom] = [word.left, word.right, word.top, word.bottom].map(Math.round) as Sides;
  const sides = (start: number, step: 1 | -1, end: number, far: number, at: (v: number) => number): number[] => {
    const out: number[] = [];
    for (let v = start; step * (end - v) > 0 && Math.abs(v - start) < far && out.length < MOST_SIDES; v += step)
      if (at(v) >= PRINTED) {
        out.push(v);
        v += step * 2 * WAVER_PX;
      }
    return out;
  };
  const [farX, farY] = [LARGEST * sheet.frameWidth, LARGEST * sheet.frameHeight];
  const room = WAVER_PX + 1;
  const [x0, x1] = [Math.ceil(bounds.left) + room, Math.floor(bounds.right) - room];
  const [y0, y1] = [Math.ceil(bounds.top) + room, Math.floor(bounds.bottom) - room];
  const tops = sides(top - CLEAR_OF_WORD_PX, -1, y0, farY, (y) => level(y, left, right));
  if (!tops.length) return null;
  const bottoms = sides(bottom + CLEAR_OF_WORD_PX, 1, y1, farY, (y) => level(y, left, right));
  if (!bottoms.length) return null;
  const lefts = sides(left - CLEAR_OF_WORD_PX, -1, x0, farX, (x) => upright(x, top, bottom));
  const rights = sides(right + CLEAR_OF_WORD_PX, 1, x1, farX, (x) => upright(x, top, bottom));
  for (const t of tops)
    for (const b of bottoms)
      for (const l of lefts)
        for (const r of rights)
          if (
            level(t, l, r) >= PRINTED &&
            level(b, l, r) >= PRINTED &&
            upright(l, t, b) >= PRINTED &&
            upright(r, t, b) >= PRINTED
          )
            return { left: l, right: r, top: t, bottom: b };
  return null;
}

type Sides = [number, number, number, number];

/** Half the width of a box's side with its blur, sheet pixels. */
const HALF_SIDE_PX = 4;

/** Makes the sides of boxes unknown in a picture of the grid, in place. */
export function hideSides(data: Uint8Array, width: number, boxes: readonly SheetBox[]): void {
  const fill = (xFrom: number, xTo: number, yFrom: number, yTo: number): void => {
    for (let y = yFrom; y <= yTo; y++) data.fill(255, y * width + xFrom, y * width + xTo + 1);
  };
  const h = HALF_SIDE_PX;
  for (const { left, right, top, bottom } of boxes) {
    for (const y of [top, bottom]) fill(left - h, right + h, y - h, y + h);
    for (const x of [left, right]) fill(x - h, x + h, top - h, bottom + h);
  }
}
