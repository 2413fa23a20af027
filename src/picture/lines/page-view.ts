import type { Grey, Photo } from '../raster.ts';

/** A photo made small enough to be looked over as a whole, and what one of its pixels is in the photo's. */
export type PageView = {
  readonly grey: Grey;
  /** photo pixels in one pixel of the view */
  readonly scale: number;
  /** standard deviation of the grain, grey levels */
  readonly grain: number;
};

/** Thin lines drown in the grain of a bigger picture, and merge in a smaller one. */
const LONGEST_EDGE = 1800;

/** The photo halved until its longer edge is 900 to 1800 pixels; smaller photos stay as they are. */
export function pageView(photo: Photo): PageView {
  let grey = photo.grey;
  let scale = 1;
  while (Math.max(grey.width, grey.height) > LONGEST_EDGE) {
    grey = scale === 1 ? photo.halfGrey : halved(grey);
    scale *= 2;
  }
  return { grey, scale, grain: grainOf(grey) };
}

/** A place of the view in the photo's pixels. */
export const inPhoto = (view: PageView, v: number): number => (v + 0.5) * view.scale - 0.5;

/** Half the size, four pixels averaged. */
export function halved({ width, height, data }: Grey): Grey {
  const w = width >> 1;
  const h = height >> 1;
  const out = new Uint8Array(w * h);
  for (let y = 0; y < h; y++) {
    let i = 2 * y * width;
    for (let x = 0; x < w; x++, i += 2)
      out[y * w + x] = (data[i]! + data[i + 1]! + data[i + width]! + data[i + width + 1]! + 2) >> 2;
  }
  return { width: w, height: h, data: out };
}

/** Rows as columns: level lines of the one are upright lines of the other. */
export function turned({ width, height, data }: Grey): Grey {
  const out = new Uint8Array(data.length);
  const block = 32;
  for (let by = 0; by < height; by += block)
    for (let bx = 0; bx < width; bx += block)
      for (let y = by; y < Math.min(height, by + block); y++)
        for (let x = bx; x < Math.min(width, bx + block); x++) out[x * height + y] = data[y * width + x]!;
  return { width: height, height: width, data: out };
}

/** Grain from how far pixels stand off the mean of their neighbours, where the picture is plain: the lower third. */
export function grainOf({ width, height, data }: Grey): number {
  const counts = new Uint32Array(256);
  let total = 0;
  for (let y = 1; y < height - 1; y += 3)
    for (let x = 1; x < width - 1; x += 3) {
      const i = y * width + x;
      counts[Math.min(255, Math.abs(2 * data[i]! - data[i - 1]! - data[i + 1]!))]!++;
      total++;
    }
  let seen = 0;
  let level = 0;
  while (level < 255 && (seen += counts[level]!) < total / 3) level++;
  // a third of a normal spread lies within 0.43 deviations; the difference of three pixels has √6 of the grain
  return Math.max(0.4, (level + 0.5) / (0.43 * Math.sqrt(6)));
}
