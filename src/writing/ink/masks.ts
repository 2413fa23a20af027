import { fieldLike, meanAround, type Field } from '../crop/filters.ts';
import { statistics } from '../crop/preparations.ts';

/** Where ink may be: 1 in `mask`. `edge`: how steep the brightness is; `deviation`: how much it varies around. */
export type Ink = {
  readonly width: number;
  readonly height: number;
  readonly mask: Uint8Array;
  readonly edge: Float32Array;
  readonly deviation: Float32Array;
};

/** How letters differ from their ground. */
export type Polarity = 'dark' | 'light';

/** Neighbourhood of the threshold, flat pixels: as wide as small letters are high, and as large ones. */
const REACHES_PX = [22, 40] as const;
/** Ink differs from the mean around it by this share of the deviation, and by so many steps of grey at least. */
const SHARE = 0.3;
const LEAST = 4;

/**
 * Everything darker, and everything lighter, than its neighbourhood. The border of the picture stays empty.
 * Source of the threshold: W. Niblack, An Introduction to Digital Image Processing (1986) 115.
 */
export function inkOf(grey: Field, reach_px: number = REACHES_PX[0]): Record<Polarity, Ink> {
  const { width, height } = grey;
  const smooth = meanAround(grey, 1);
  const { mean, deviation } = statistics(grey, reach_px);
  const edge = steepness(smooth);
  const maskOf = (sign: 1 | -1) => {
    const mask = new Uint8Array(width * height);
    for (let y = 1; y < height - 1; y++)
      for (let x = 1, k = y * width + 1; x < width - 1; x++, k++)
        if (sign * (mean.values[k]! - smooth.values[k]!) > Math.max(LEAST, SHARE * deviation.values[k]!)) mask[k] = 1;
    return mask;
  };
  const of = (mask: Uint8Array): Ink => ({ width, height, mask, edge, deviation: deviation.values });
  return { dark: of(maskOf(1)), light: of(maskOf(-1)) };
}

/** Steps of grey a pixel, central differences. */
function steepness(grey: Field): Float32Array {
  const { width, height, values } = grey;
  return fieldLike(grey, (k) => {
    const x = k % width;
    if (x === 0 || x === width - 1 || k < width || k >= width * (height - 1)) return 0;
    return Math.hypot(values[k + 1]! - values[k - 1]!, values[k + width]! - values[k - width]!) / 2;
  }).values;
}
