import { inkBox, type InkPatch } from './ink-patch.ts';

/**
 * What a piece of ink looks like to the digit reader: at every place of a coarse raster, how much edge runs in each of
 * eight directions, and how much ink there is. Source: C.-L. Liu, K. Nakashima, H. Sako, H. Fujisawa, Handwritten digit
 * recognition: benchmarking of state-of-the-art techniques, Pattern Recognition 36 (2003), "gradient feature" with
 * aspect ratio adaptive normalization.
 */

const SIDE = 28;
const CORE = 24;
const CELLS = 6;
const DIRECTIONS = 8;
/** Spread of a cell's weights: √2·spacing/π, so that neighbouring cells lose nothing between them. */
const SPREAD = (Math.SQRT2 * (SIDE / CELLS)) / Math.PI;
const DIRECTION_FEATURES = CELLS * CELLS * DIRECTIONS;

/** How many numbers describe a piece of ink. */
export const FEATURE_COUNT = DIRECTION_FEATURES + CELLS * CELLS + 2;

/** WEIGHTS[c·SIDE + p]: how much pixel p counts for cell c, along either side. */
const WEIGHTS = (() => {
  const weights = new Float32Array(CELLS * SIDE);
  for (let c = 0; c < CELLS; c++)
    for (let p = 0; p < SIDE; p++) {
      const away = (p + 0.5 - (c + 0.5) * (SIDE / CELLS)) / SPREAD;
      weights[c * SIDE + p] = Math.abs(away) < 3 ? Math.exp(-0.5 * away * away) : 0;
    }
  return weights;
})();

/** The cells a pixel counts for at all: first and last, along either side. */
const NEAR = Array.from({ length: SIDE }, (_, p) => {
  const cells = Array.from({ length: CELLS }, (_, c) => c).filter((c) => WEIGHTS[c * SIDE + p]! > 0.02);
  return [cells[0]!, cells[cells.length - 1]!] as const;
});

/**
 * Describes a piece of ink whatever its size and place.
 * @returns FEATURE_COUNT numbers, about 0..2; null on bare paper
 */
export function digitFeatures(faint: InkPatch): Float32Array | null {
  const patch = evened(faint);
  const box = inkBox(patch);
  if (!box) return null;
  const wide = box.x1 - box.x0;
  const high = box.y1 - box.y0;
  const image = normalised(patch, box);
  const features = new Float32Array(FEATURE_COUNT);
  addEdges(image, features);
  addInk(image, features);
  for (let i = 0; i < FEATURE_COUNT - 2; i++) features[i] = Math.sqrt(features[i]!);
  features[FEATURE_COUNT - 2] = Math.min(2, wide / high);
  features[FEATURE_COUNT - 1] = Math.min(2, high / wide / 4);
  return features;
}

/** The same with full strokes at 1, however faint the pen. */
function evened({ width, height, ink }: InkPatch): InkPatch {
  const most = Math.max(...ink);
  const strokes = ink.filter((v) => v > 0.5 * most).sort();
  const full = strokes[Math.floor(0.6 * strokes.length)] ?? 1;
  return { width, height, ink: ink.map((v) => Math.min(1, v / full)) };
}

/** The ink in its box on a square of its own, slim pieces widened a little. */
function normalised(
  { width, height, ink }: InkPatch,
  { x0, y0, x1, y1 }: { x0: number; y0: number; x1: number; y1: number },
): Float32Array {
  const longer = Math.max(x1 - x0, y1 - y0);
  const sideOf = (length: number) => CORE * Math.sqrt(Math.sin((Math.PI / 2) * (length / longer)));
  const [across, down] = [sideOf(x1 - x0), sideOf(y1 - y0)];
  const [left, top] = [(SIDE - across) / 2, (SIDE - down) / 2];
  const out = new Float32Array(SIDE * SIDE);
  const at = (x: number, y: number) => (x < 0 || y < 0 || x >= width || y >= height ? 0 : ink[y * width + x]!);
  for (let v = 0; v < SIDE; v++)
    for (let u = 0; u < SIDE; u++) {
      const x = x0 + ((u + 0.5 - left) / across) * (x1 - x0) - 0.5;
      const y = y0 + ((v + 0.5 - top) / down) * (y1 - y0) - 0.5;
      if (x < x0 - 1 || x > x1 || y < y0 - 1 || y > y1) continue;
      const [ix, iy] = [Math.floor(x), Math.floor(y)];
      const [fx, fy] = [x - ix, y - iy];
      out[v * SIDE + u] =
        (at(ix, iy) * (1 - fx) + at(ix + 1, iy) * fx) * (1 - fy) +
        (at(ix, iy + 1) * (1 - fx) + at(ix + 1, iy + 1) * fx) * fy;
    }
  return out;
}

/** Each gradient is split between the two directions beside it. */
function addEdges(image: Float32Array, features: Float32Array): void {
  for (let y = 1; y < SIDE - 1; y++)
    for (let x = 1; x < SIDE - 1; x++) {
      const i = y * SIDE + x;
      const [a, b, c] = [image[i - SIDE - 1]!, image[i - SIDE]!, image[i - SIDE + 1]!];
      const [d, f] = [image[i - 1]!, image[i + 1]!];
      const [g, h, j] = [image[i + SIDE - 1]!, image[i + SIDE]!, image[i + SIDE + 1]!];
      const gx = c + 2 * f + j - a - 2 * d - g;
      const gy = g + 2 * h + j - a - 2 * b - c;
      const size = Math.hypot(gx, gy);
      if (size < 0.05) continue;
      const turn = ((Math.atan2(gy, gx) / (2 * Math.PI) + 1) * DIRECTIONS) % DIRECTIONS;
      const first = Math.floor(turn) % DIRECTIONS;
      const second = (first + 1) % DIRECTIONS;
      const part = turn - Math.floor(turn);
      spread(x, y, size * (1 - part) * 0.05, first * CELLS * CELLS, features);
      spread(x, y, size * part * 0.05, second * CELLS * CELLS, features);
    }
}

function addInk(image: Float32Array, features: Float32Array): void {
  for (let y = 0; y < SIDE; y++)
    for (let x = 0; x < SIDE; x++) {
      const ink = image[y * SIDE + x]!;
      if (ink > 0.02) spread(x, y, ink * 0.08, DIRECTION_FEATURES, features);
    }
}

function spread(x: number, y: number, amount: number, from: number, features: Float32Array): void {
  const [left, right] = NEAR[x]!;
  const [top, bottom] = NEAR[y]!;
  for (let r = top; r <= bottom; r++) {
    const down = WEIGHTS[r * SIDE + y]! * amount;
    for (let c = left; c <= right; c++) features[from + r * CELLS + c]! += down * WEIGHTS[c * SIDE + x]!;
  }
}
