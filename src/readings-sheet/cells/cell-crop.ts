import type { WordCrop } from '../../words/word-reader.ts';
import type { Field } from '../../writing/crop/filters.ts';
import { BORDER_PX, CAPITAL_PX } from '../../writing/index.ts';
import type { Blot } from '../ink/blots.ts';

/** Blurs are shares of the digits' height. */
export type CropWay = { readonly soft: number; readonly isAlone: boolean };

/**
 * A cell's ink for the reader of words: digits as high as it was taught on, the ruling left out.
 * @param way `isAlone`: only the cell's own blots, else whatever lies around them too
 */
export function cellCrop(blots: readonly Blot[], field: Field, digit: number, { soft, isAlone }: CropWay): WordCrop {
  const { width, height, values } = field;
  const x0 = Math.min(...blots.map((b) => b.x0)) - 2;
  const x1 = Math.max(...blots.map((b) => b.x1)) + 2;
  const y0 = Math.min(...blots.map((b) => b.y0)) - 2;
  const y1 = Math.max(...blots.map((b) => b.y1)) + 2;
  const zoom = CAPITAL_PX / Math.max(digit, 0.7 * (y1 - y0));
  const level = blots.map((b) => b.level).sort((a, b) => a - b)[blots.length >> 1]!;
  const own = isAlone ? ownInk(blots, field) : null;
  const [wide, high] = [Math.max(8, Math.round((x1 - x0) * zoom)), Math.max(8, Math.round((y1 - y0) * zoom))];
  const [cropWide, cropHigh] = [wide + 2 * BORDER_PX, high + 2 * BORDER_PX];
  const grey = new Uint8Array(cropWide * cropHigh).fill(255);
  const at = (x: number, y: number): number => {
    if (x < 0 || y < 0 || x >= width || y >= height) return 0;
    const i = y * width + x;
    return own && !own.has(i) ? 0 : values[i]!;
  };
  const between = (x: number, y: number): number => {
    const [ix, iy] = [Math.floor(x), Math.floor(y)];
    const [fx, fy] = [x - ix, y - iy];
    return (
      (at(ix, iy) * (1 - fx) + at(ix + 1, iy) * fx) * (1 - fy) +
      (at(ix, iy + 1) * (1 - fx) + at(ix + 1, iy + 1) * fx) * fy
    );
  };
  const away = soft * digit;
  for (let v = 0; v < high; v++)
    for (let u = 0; u < wide; u++) {
      const [x, y] = [x0 + (u + 0.5) / zoom - 0.5, y0 + (v + 0.5) / zoom - 0.5];
      const ink = away
        ? (2 * between(x, y) +
            between(x - away, y) +
            between(x + away, y) +
            between(x, y - away) +
            between(x, y + away)) /
          6
        : between(x, y);
      grey[(v + BORDER_PX) * cropWide + u + BORDER_PX] = 255 - Math.round(235 * Math.min(1, ink / level));
    }
  return { grey, width: cropWide, height: cropHigh };
}

/** The blots' pixels and those around them. */
function ownInk(blots: readonly Blot[], { width }: Field): Set<number> {
  const own = new Set<number>();
  for (const { pixels } of blots)
    for (const at of pixels)
      for (const d of [-width - 1, -width, -width + 1, -1, 0, 1, width - 1, width, width + 1]) own.add(at + d);
  return own;
}
