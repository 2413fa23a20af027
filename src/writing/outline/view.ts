import type { Raster } from '../../picture/raster.ts';

/** A photo made small, colours apart: red, green, blue, 0..255. */
export type View = {
  readonly width: number;
  readonly height: number;
  /** photo pixels a view pixel is wide */
  readonly scale: number;
  readonly colours: readonly [Float32Array, Float32Array, Float32Array];
};

/** Averages a photo down so that its longer side has so many pixels; a smaller photo stays as it is. */
export function viewOf({ width, height, rgb }: Raster, longest_px: number): View {
  const scale = Math.max(1, Math.max(width, height) / longest_px);
  const w = Math.max(1, Math.floor(width / scale));
  const h = Math.max(1, Math.floor(height / scale));
  const colours = [0, 1, 2].map(() => new Float32Array(w * h)) as unknown as View['colours'];
  const columns = Int32Array.from({ length: w + 1 }, (_, x) => Math.min(width, Math.round(x * scale)));
  for (let y = 0; y < h; y++) {
    const [top, bottom] = [Math.round(y * scale), Math.min(height, Math.round((y + 1) * scale))];
    for (let x = 0; x < w; x++) {
      let [r, g, b] = [0, 0, 0];
      for (let j = top; j < bottom; j++)
        for (let i = columns[x]!, k = 3 * (j * width + i); i < columns[x + 1]!; i++, k += 3) {
          r += rgb[k]!;
          g += rgb[k + 1]!;
          b += rgb[k + 2]!;
        }
      const count = (bottom - top) * (columns[x + 1]! - columns[x]!);
      colours[0][y * w + x] = r / count;
      colours[1][y * w + x] = g / count;
      colours[2][y * w + x] = b / count;
    }
  }
  return { width: w, height: h, scale, colours };
}
