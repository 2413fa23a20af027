import type { Field } from '../../writing/crop/filters.ts';

/** A connected piece of ink. Flat pixels, far sides exclusive. */
export type Blot = {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** indices of its pixels in the field */
  readonly pixels: readonly number[];
  /** its centre, each pixel weighing as much as it is dark */
  readonly cx: number;
  readonly cy: number;
  /** how dark its strokes are */
  readonly level: number;
};

/**
 * Finds connected ink of at least `least` darkness; pieces of fewer than `fewest` pixels are grain. @param reach pixels no
 * further from each other than this along either side are connected
 */
export function findBlots({ width, height, values }: Field, least: number, fewest: number, reach = 1): Blot[] {
  const seen = new Uint8Array(width * height);
  const blots: Blot[] = [];
  for (let start = 0; start < values.length; start++) {
    if (seen[start] || values[start]! < least) continue;
    const pixels = [start];
    seen[start] = 1;
    for (const at of pixels) {
      const x = at % width;
      const y = (at - x) / width;
      for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++)
        for (let u = Math.max(0, x - reach); u <= Math.min(width - 1, x + reach); u++) {
          const next = v * width + u;
          if (seen[next] || values[next]! < least) continue;
          seen[next] = 1;
          pixels.push(next);
        }
    }
    if (pixels.length >= fewest) blots.push(blotOf(pixels, width, values));
  }
  return blots;
}

function blotOf(pixels: readonly number[], width: number, values: Float32Array): Blot {
  let [x0, y0, x1, y1, sx, sy, total] = [Infinity, Infinity, 0, 0, 0, 0, 0];
  for (const at of pixels) {
    const x = at % width;
    const y = (at - x) / width;
    x0 = Math.min(x0, x);
    x1 = Math.max(x1, x + 1);
    y0 = Math.min(y0, y);
    y1 = Math.max(y1, y + 1);
    const v = values[at]!;
    sx += v * (x + 0.5);
    sy += v * (y + 0.5);
    total += v;
  }
  const sorted = pixels.map((at) => values[at]!).sort((a, b) => a - b);
  return {
    x0,
    y0,
    x1,
    y1,
    pixels,
    cx: sx / total,
    cy: sy / total,
    level: sorted[Math.floor(0.8 * (sorted.length - 1))]!,
  };
}
