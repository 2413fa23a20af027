import { greyAt } from '../../picture/raster.ts';
import type { Surface, TextBox } from '../surface.ts';
import type { Field } from './filters.ts';

/** Height of capitals and figures in a crop: what the reader of words was taught on. */
export const CAPITAL_PX = 34;
export const BORDER_PX = 12;
/** A crop shows this much beside, above and below the letters, shares of their height: commas, tildes, accents. */
const BESIDE = 0.25;
const ABOVE = 0.3;
/** A smear of specks may be taken for a long line of tiny letters. */
const LONGEST_PX = 2400;

/** A line of text as it stands in the photo, upright, letters dark, enlarged to the height of `CAPITAL_PX`. */
export type Sample = Field & {
  /** crop pixels a flat pixel is wide */
  readonly zoom: number;
  /** 1 where something that is not part of the line stands: a ruling, a neighbour */
  readonly foreign: Uint8Array;
  /** flat place of a crop's place */
  readonly toFlat: (i: number, j: number) => readonly [number, number];
};

/**
 * Looks a line of text up in the photo.
 * @param isForeign flat places that belong to something else; nothing by default
 * @param turn `around` samples it upside down
 */
export function sampleBox(
  surface: Surface,
  box: TextBox,
  isForeign?: (x: number, y: number) => boolean,
  turn: 'upright' | 'around' = 'upright',
): Sample {
  const capital = Math.max(4, box.y1 - box.y0);
  const long = box.x1 - box.x0 + 2 * BESIDE * capital;
  const high = capital * (1 + 2 * ABOVE);
  const zoom = Math.min(CAPITAL_PX / capital, LONGEST_PX / long);
  const width = Math.max(8, Math.round(long * zoom));
  const height = Math.max(8, Math.round(high * zoom));
  const [cx, cy] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const sign = turn === 'upright' ? 1 : -1;
  const toFlat = (i: number, j: number): readonly [number, number] => {
    const a = (sign * (i + 0.5 - width / 2)) / zoom;
    const b = (sign * (j + 0.5 - height / 2)) / zoom;
    return [cx + a, cy + box.slope * a + b];
  };
  // where the photo is finer than the crop, its pixels are averaged by two: grain would be sampled else
  const isFine = surface.photoPixels > 1.4 * zoom;
  const grey = isFine ? surface.photo.halfGrey : surface.photo.grey;
  const place = placer(surface, toFlat, width, height);
  const values = new Float32Array(width * height);
  const foreign = new Uint8Array(width * height);
  for (let j = 0, k = 0; j < height; j++)
    for (let i = 0; i < width; i++, k++) {
      const [px, py] = place(i, j);
      const v = isFine ? greyAt(grey, px / 2 - 0.25, py / 2 - 0.25) : greyAt(grey, px, py);
      values[k] = box.isLight ? 255 - v : v;
      if (isForeign?.(...toFlat(i, j))) foreign[k] = 1;
    }
  return { width, height, values, zoom, foreign, toFlat };
}

/** Photo places in a crop: between columns 16 pixels apart the map is as good as straight. */
function placer(
  surface: Surface,
  toFlat: (i: number, j: number) => readonly [number, number],
  width: number,
  height: number,
): (i: number, j: number) => readonly [number, number] {
  const MESH = 16;
  const columns = Math.ceil(width / MESH) + 1;
  const tops = Array.from({ length: columns }, (_, c) => surface.toPhoto(...toFlat(c * MESH, 0)));
  const bottoms = Array.from({ length: columns }, (_, c) => surface.toPhoto(...toFlat(c * MESH, height)));
  return (i, j) => {
    const c = Math.floor(i / MESH);
    const f = i / MESH - c;
    const g = j / height;
    const [a, b, d, e] = [tops[c]!, tops[c + 1]!, bottoms[c]!, bottoms[c + 1]!];
    const mix = (k: 0 | 1) => (1 - g) * ((1 - f) * a[k] + f * b[k]) + g * ((1 - f) * d[k] + f * e[k]);
    return [mix(0), mix(1)];
  };
}
