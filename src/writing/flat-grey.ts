import { greyAt } from '../picture/raster.ts';
import type { Field } from './crop/filters.ts';
import type { Surface } from './surface.ts';

/** The map is worked out at every so many pixels, and between them it is as good as straight. */
const MESH = 16;

/** Brightness of a surface laid flat, 0..255; beyond the photo its edge goes on. */
export function flatGrey(surface: Surface): Field {
  const { width, height, photo } = surface;
  const values = new Float32Array(width * height);
  const isFine = surface.photoPixels > 1.4;
  const grey = isFine ? photo.halfGrey : photo.grey;
  const columns = Math.ceil(width / MESH) + 1;
  let above = meshRow(surface, 0, columns);
  for (let y0 = 0; y0 < height; y0 += MESH) {
    const below = meshRow(surface, y0 + MESH, columns);
    for (let y = y0; y < Math.min(height, y0 + MESH); y++) {
      const g = (y - y0) / MESH;
      for (let x = 0, k = y * width; x < width; x++, k++) {
        const c = (x / MESH) | 0;
        const f = x / MESH - c;
        const i = 2 * c;
        const ax = above[i]! + (above[i + 2]! - above[i]!) * f;
        const ay = above[i + 1]! + (above[i + 3]! - above[i + 1]!) * f;
        const px = ax + (below[i]! + (below[i + 2]! - below[i]!) * f - ax) * g;
        const py = ay + (below[i + 1]! + (below[i + 3]! - below[i + 1]!) * f - ay) * g;
        values[k] = isFine ? greyAt(grey, px / 2 - 0.25, py / 2 - 0.25) : greyAt(grey, px, py);
      }
    }
    above = below;
  }
  return { width, height, values };
}

function meshRow(surface: Surface, y: number, columns: number): Float64Array {
  const row = new Float64Array(2 * columns);
  for (let c = 0; c < columns; c++) row.set(surface.toPhoto(c * MESH, y), 2 * c);
  return row;
}
