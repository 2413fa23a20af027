import type { Field } from '../../writing/crop/filters.ts';
import type { InkPatch } from '../digits/ink-patch.ts';
import type { Blot } from '../ink/blots.ts';

/** A piece of ink between two upright cuts: of one blot or several. */
export type Slice = { readonly blots: readonly Blot[]; readonly x0: number; readonly x1: number };

/** Upper edge of a slice's blots. */
export const topOf = ({ blots }: Slice): number => Math.min(...blots.map(({ y0 }) => y0));
/** Lower edge of a slice's blots. */
export const footOf = ({ blots }: Slice): number => Math.max(...blots.map(({ y1 }) => y1));

/** Pieces beside each other as one. */
export const together = (slices: readonly Slice[]): Slice => ({
  blots: [...new Set(slices.flatMap(({ blots }) => blots))],
  x0: Math.min(...slices.map(({ x0 }) => x0)),
  x1: Math.max(...slices.map(({ x1 }) => x1)),
});

/** The ink of a slice alone, with the soft edge around it. */
export function patchOf({ blots, x0, x1 }: Slice, { width, height, values }: Field): InkPatch {
  const [left, right] = [Math.max(0, x0 - 2), Math.min(width, x1 + 2)];
  const top = Math.max(0, Math.min(...blots.map(({ y0 }) => y0)) - 2);
  const bottom = Math.min(height, Math.max(...blots.map(({ y1 }) => y1)) + 2);
  const [wide, high] = [right - left, bottom - top];
  const ink = new Float32Array(wide * high);
  const level = Math.max(...blots.map((b) => b.level));
  for (const { pixels } of blots)
    for (const at of pixels) {
      const x = at % width;
      const y = (at - x) / width;
      if (x < x0 || x >= x1) continue;
      for (let v = Math.max(top, y - 1); v <= Math.min(bottom - 1, y + 1); v++)
        for (let u = Math.max(left, x - 1); u <= Math.min(right - 1, x + 1); u++)
          ink[(v - top) * wide + u - left] = Math.min(1, values[v * width + u]! / level);
    }
  return { width: wide, height: high, ink };
}

/** Cuts are tried where at most this share of the fullest column is ink. */
const THIN = 0.62;
const MOST_CUTS = 4;

/**
 * A slice cut wherever two digits might touch: at the thinnest places, not too near its sides. @param digit usual height
 */
export function cutApart(slice: Slice, field: Field, digit: number): Slice[] {
  const wide = slice.x1 - slice.x0;
  if (wide < 0.62 * Math.max(digit, footOf(slice) - topOf(slice))) return [slice];
  const { width, ink } = patchOf(slice, field);
  const columns = Array.from({ length: wide }, (_, c) => {
    let total = 0;
    for (let i = c + Math.min(2, slice.x0); i < ink.length; i += width) total += ink[i]!;
    return total;
  });
  const smooth = columns.map((v, i) => (v * 2 + (columns[i - 1] ?? v) + (columns[i + 1] ?? v)) / 4);
  const most = Math.max(...smooth);
  const margin = 0.16 * digit;
  const places = smooth
    .map((v, i) => ({ v, i }))
    .filter(({ v, i }) => i > margin && i < wide - margin && v < THIN * most)
    .filter(({ v, i }) => v <= (smooth[i - 1] ?? 0) && v < (smooth[i + 1] ?? 0))
    .sort((a, b) => a.v - b.v)
    .slice(0, MOST_CUTS)
    .map(({ i }) => slice.x0 + i)
    .sort((a, b) => a - b);
  const ends = [slice.x0, ...places, slice.x1];
  return ends.slice(1).map((x1, k) => ({ blots: slice.blots, x0: ends[k]!, x1 }));
}
