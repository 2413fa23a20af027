import type { Grey } from '../../picture/raster.ts';

/** A blot about as big as a printed letter: its centre and height, view pixels. */
export type GlyphBlob = { readonly x: number; readonly y: number; readonly size: number };

/**
 * Blots the size of letters, by a local threshold and connected components. Lines, frames and grids are far bigger.
 * @param isDark letters darker than what surrounds them
 * Source of the threshold: D. Bradley & G. Roth, Adaptive thresholding using the integral image, J. Graphics Tools 12(2), 2007.
 */
export function glyphBlobs(grey: Grey, isDark: boolean): GlyphBlob[] {
  const ink = inkOf(grey, isDark);
  const { width, height } = grey;
  const largest = 0.035 * Math.max(width, height);
  const blobs: GlyphBlob[] = [];
  const stack: number[] = [];
  const around = [-1, 1, -width, width, -width - 1, -width + 1, width - 1, width + 1];
  for (let start = 0; start < ink.length; start++) {
    if (ink[start] !== 1) continue;
    let [x0, x1, y0, y1, count] = [width, 0, height, 0, 0];
    ink[start] = 2;
    stack.push(start);
    while (stack.length) {
      const i = stack.pop()!;
      const y = (i / width) | 0;
      const x = i - y * width;
      if (x < x0) x0 = x;
      if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      if (y > y1) y1 = y;
      count++;
      // the border of the picture is never ink
      for (let k = 0; k < 8; k++) {
        const j = i + around[k]!;
        if (ink[j] !== 1) continue;
        ink[j] = 2;
        stack.push(j);
      }
    }
    const w = x1 - x0 + 1;
    const h = y1 - y0 + 1;
    const size = Math.max(w, h);
    if (size < 4 || size > largest || size > 5 * Math.min(w, h) || count < 6) continue;
    blobs.push({ x: (x0 + x1) / 2, y: (y0 + y1) / 2, size });
  }
  return blobs;
}

const INK_SHARE = 0.86;

/** 1 where a pixel is well darker (lighter) than the mean around it, the border left blank. */
function inkOf({ width, height, data }: Grey, isDark: boolean): Uint8Array {
  const reach = Math.max(6, Math.round(Math.max(width, height) / 80));
  const out = new Uint8Array(width * height);
  const columns = new Float64Array(width);
  for (let y = -reach; y < height; y++) {
    const enters = y + reach;
    const leaves = y - reach - 1;
    if (enters < height && enters >= 0) for (let x = 0; x < width; x++) columns[x]! += data[enters * width + x]!;
    if (leaves >= 0) for (let x = 0; x < width; x++) columns[x]! -= data[leaves * width + x]!;
    if (y < 1 || y >= height - 1) continue;
    const rows = Math.min(height - 1, enters) - Math.max(0, leaves + 1) + 1;
    let sum = 0;
    for (let x = 0; x < reach; x++) sum += columns[x]!;
    for (let x = 0; x < width; x++) {
      if (x + reach < width) sum += columns[x + reach]!;
      if (x - reach - 1 >= 0) sum -= columns[x - reach - 1]!;
      const mean = sum / (rows * (Math.min(width - 1, x + reach) - Math.max(0, x - reach) + 1));
      const v = data[y * width + x]!;
      const isInk = isDark ? v < INK_SHARE * mean : v * INK_SHARE > mean && v > 40;
      if (isInk && x > 0 && x < width - 1) out[y * width + x] = 1;
    }
  }
  return out;
}
