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
  /** where the light comes from, where the letters are a relief, rad */
  readonly light?: number;
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
  const values = new Float32Array(width * height);
  const foreign = new Uint8Array(width * height);
  const columns = Math.ceil(width / MESH) + 1;
  const [top, bottom] = [0, height].map((j) => meshRow(surface, toFlat, columns, j)) as [Float64Array, Float64Array];
  const [shrink, offset] = isFine ? [0.5, -0.25] : [1, 0];
  for (let i = 0; i < width; i++) {
    const c = 2 * Math.floor(i / MESH);
    const f = (i % MESH) / MESH;
    const tx = top[c]! + (top[c + 2]! - top[c]!) * f;
    const ty = top[c + 1]! + (top[c + 3]! - top[c + 1]!) * f;
    const dx = (bottom[c]! + (bottom[c + 2]! - bottom[c]!) * f - tx) / height;
    const dy = (bottom[c + 1]! + (bottom[c + 3]! - bottom[c + 1]!) * f - ty) / height;
    for (let j = 0, k = i; j < height; j++, k += width) {
      const v = greyAt(grey, (tx + dx * j) * shrink + offset, (ty + dy * j) * shrink + offset);
      values[k] = box.isLight ? 255 - v : v;
      if (isForeign?.(...toFlat(i, j))) foreign[k] = 1;
    }
  }
  return { width, height, values, zoom, foreign, toFlat };
}

/** Between columns so many pixels apart the map to the photo is as good as straight. */
const MESH = 16;

/** Photo places of every `MESH`th column of one row of a crop. */
function meshRow(
  surface: Surface,
  toFlat: (i: number, j: number) => readonly [number, number],
  columns: number,
  j: number,
): Float64Array {
  const row = new Float64Array(2 * columns);
  for (let c = 0; c < columns; c++) row.set(surface.toPhoto(...toFlat(c * MESH, j)), 2 * c);
  return row;
}
