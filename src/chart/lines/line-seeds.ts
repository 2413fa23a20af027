import { netInk, strokeNear, type SeedStroke } from '../trace/seed-stroke.ts';
import type { TracingTable } from '../trace/tracing-table.ts';

/** A box on the sheet [px] that holds no part of a curve: words, a legend. */
export type SheetBox = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

/** Rows and columns the sheet is looked through along, sheet pixels apart. */
const EVERY_PX = 13;
/** A stroke stands out from what lies so far to both its sides. */
const SIDES_PX = [4, 6];
const LEAST_RIDGE = 9;
/** The strongest crossings are looked at closely; more would only be noise. */
const MOST_CROSSINGS = 900;

/**
 * Pieces of stroke anywhere in the frame that a curve may run through, the clearest first: where rows and columns of
 * the sheet cross a ridge of ink that is not the grid's.
 * @param masks boxes to leave out
 */
export function lineSeeds(table: TracingTable, masks: readonly SheetBox[] = []): SeedStroke[] {
  const { sheet, grid } = table;
  const crossings = crossingsOf(table).filter(({ x, y }) => !masks.some((m) => isIn(m, x, y)));
  crossings.sort((a, b) => b.ridge - a.ridge);
  const seeds: SeedStroke[] = [];
  for (const { x, y } of crossings.slice(0, MOST_CROSSINGS)) {
    const stroke = strokeNear(sheet, grid, x, y, 1);
    if (stroke) seeds.push(stroke);
  }
  return seeds.sort((a, b) => b.contrast - a.contrast);
}

/** Whether a place on the sheet [px] lies in a box. Source: definition. */
export const isIn = (box: SheetBox, x: number, y: number): boolean =>
  x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;

/** Around a label its paper is left bare, sheet pixels. */
const HALO_PX = 8;

/** A word with the bare paper around it. */
export const withHalo = (b: SheetBox): SheetBox => ({
  left: b.left - HALO_PX,
  top: b.top - HALO_PX,
  right: b.right + HALO_PX,
  bottom: b.bottom + HALO_PX,
});

type Crossing = { x: number; y: number; ridge: number };

function crossingsOf({ sheet, grid, bounds }: TracingTable): Crossing[] {
  const found: Crossing[] = [];
  const scan = (across: 'x' | 'y', at: number, from: number, to: number) => {
    const n = to - from + 1;
    const line = new Float32Array(n);
    for (let k = 0; k < n; k++)
      line[k] = across === 'x' ? netInk(sheet, grid, from + k, at) : netInk(sheet, grid, at, from + k);
    const level = (k: number) => (k < 0 || k >= n ? 0 : line[k]!);
    for (let k = 1; k + 1 < n; k++) {
      const v = line[k]!;
      if (v < LEAST_RIDGE || v < line[k - 1]! || v <= line[k + 1]!) continue;
      const side = (way: number) => Math.min(level(k + way * SIDES_PX[0]!), level(k + way * SIDES_PX[1]!));
      const ridge = v - Math.max(side(-1), side(1));
      if (ridge < LEAST_RIDGE) continue;
      found.push(across === 'x' ? { x: from + k, y: at, ridge } : { x: at, y: from + k, ridge });
    }
  };
  const left = Math.ceil(bounds.left) + 1;
  const right = Math.floor(bounds.right) - 1;
  const top = Math.ceil(bounds.top) + 1;
  const bottom = Math.floor(bounds.bottom) - 1;
  for (let x = left + (EVERY_PX >> 1); x < right; x += EVERY_PX) scan('y', x, top, bottom);
  for (let y = top + (EVERY_PX >> 1); y < bottom; y += EVERY_PX) scan('x', y, left, right);
  return found;
}
