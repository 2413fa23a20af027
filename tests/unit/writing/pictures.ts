import { homographyOf, inverseOf, project } from '../../../src/picture/homography.ts';
import { preparePhoto, type Photo } from '../../../src/picture/raster.ts';
import type { Field } from '../../../src/writing/crop/filters.ts';

export type Colour = readonly [number, number, number];
type Xy = readonly [number, number];

/** A picture whose every pixel is told by a function of its place. */
export function photoOf(width: number, height: number, colourAt: (x: number, y: number) => Colour): Photo {
  const rgb = new Uint8Array(3 * width * height);
  for (let y = 0, k = 0; y < height; y++) for (let x = 0; x < width; x++, k += 3) rgb.set(colourAt(x, y), k);
  return preparePhoto({ width, height, rgb });
}

/**
 * A plate in perspective on a ground, rows of small dark bars where its letters would be.
 * @param corners from the top left clockwise
 * @param isOn places of the plate, 0..1 both ways, that are cut away or stick out; the unit square by default
 */
export function platePhoto(
  width: number,
  height: number,
  corners: readonly Xy[],
  colours: { readonly plate: Colour; readonly ground: Colour; readonly letters: Colour },
  isOn = (u: number, v: number) => u > 0 && v > 0 && u < 1 && v < 1,
): Photo {
  const unit: Xy[] = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ];
  const toUnit = inverseOf(homographyOf(unit, corners)!);
  const grain = grainOf(7);
  return photoOf(width, height, (x, y) => {
    const [u, v] = project(toUnit, x + 0.5, y + 0.5);
    const colour = !isOn(u, v) ? colours.ground : isBar(u, v) ? colours.letters : colours.plate;
    const noise = grain();
    return [colour[0] + noise, colour[1] + noise, colour[2] + noise];
  });
}

const isBar = (u: number, v: number) =>
  u > 0.1 && u < 0.8 && v > 0.12 && v < 0.9 && (v * 8) % 1 < 0.45 && (u * 34) % 1 < 0.55;

/** Steps of grey between −6 and 6, the same every time. Source: D. H. Lehmer's generator, modulus 2^31 − 1. */
function grainOf(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return (state % 13) - 6;
  };
}

/** A flat picture of one brightness with rectangles of another on it, edges a pixel soft. */
export function flatOf(
  width: number,
  height: number,
  ground: number,
  bars: readonly {
    readonly x: number;
    readonly y: number;
    readonly w: number;
    readonly h: number;
    readonly grey: number;
  }[],
): Field {
  const values = new Float32Array(width * height).fill(ground);
  for (const { x, y, w, h, grey } of bars)
    for (let j = y; j < y + h; j++) for (let i = x; i < x + w; i++) values[j * width + i] = grey;
  return { width, height, values };
}

/** Bars side by side, as letters stand in a line. */
export const lineOfBars = (count: number, x: number, y: number, h: number, grey: number) =>
  Array.from({ length: count }, (_, i) => ({ x: x + Math.round(0.8 * h * i), y, w: Math.round(0.55 * h), h, grey }));
