import type { Grey } from '../raster.ts';

/** Points of one printed stroke from row to row: `x` across at each `y`, and how far it stands off its surroundings. */
export type Chain = { readonly y: number[]; readonly x: number[]; readonly strength: number[] };

export type Chains = { readonly dark: Chain[]; readonly light: Chain[] };

/** How far to each side a stroke's surroundings are looked at, pixels: for thin lines and for thick ones. */
const NEAR = 2;
const FAR = 4;
/** Rows summed up: grain goes down, strokes leaning up to 30° stay. */
const ROWS = 5;
/** A stroke must differ from both its sides by this many deviations of the grain, and by this share of the brightness. */
const OVER_GRAIN = 1.3;
const LEAST_SHARE = 0.012;

/**
 * Every stroke that runs more or less down the picture, followed from row to row.
 * A stroke is a ridge: darker than both its sides, or lighter than both; the edge of a sheet is neither.
 * @param grain standard deviation of the picture's noise, grey levels
 * @param shortest rows a chain must cover to be kept
 */
export function ridgeChains(grey: Grey, grain: number, shortest: number): Chains {
  const { width, height, data } = grey;
  const dark = new ChainLinker(width, shortest);
  const light = new ChainLinker(width, shortest);
  const sums = new Int16Array(width);
  const rough = roughness(grey);
  const least = (OVER_GRAIN * grain * ROWS) / Math.sqrt(ROWS);
  for (let y = 2; y < height - 2; y++) {
    const at = y * width;
    for (let x = 0; x < width; x++) {
      const i = at + x;
      sums[x] = data[i - 2 * width]! + data[i - width]! + data[i]! + data[i + width]! + data[i + 2 * width]!;
    }
    dark.startRow(y);
    light.startRow(y);
    const tiles = (y >> TILE_BITS) * rough.width;
    for (let x = FAR; x < width - FAR; x++) {
      const c = sums[x]!;
      const l = sums[x - 1]!;
      const r = sums[x + 1]!;
      if (c <= l && c < r) {
        const depth = Math.max(
          Math.min(sums[x - NEAR]!, sums[x + NEAR]!) - c,
          Math.min(sums[x - FAR]!, sums[x + FAR]!) - c,
        );
        if (depth > least && depth > LEAST_SHARE * c && depth > rough.data[tiles + (x >> TILE_BITS)]!)
          dark.add(x + between(l, c, r), depth / ROWS);
      } else if (c >= l && c > r) {
        const depth = Math.max(
          c - Math.max(sums[x - NEAR]!, sums[x + NEAR]!),
          c - Math.max(sums[x - FAR]!, sums[x + FAR]!),
        );
        if (depth > least && depth > LEAST_SHARE * c && depth > rough.data[tiles + (x >> TILE_BITS)]!)
          light.add(x + between(l, c, r), depth / ROWS);
      }
    }
  }
  return { dark: dark.finish(), light: light.finish() };
}

/** In a brushed plate, wood or 1 mm paper everything is a ridge: only what stands out there is a line. */
const OVER_ROUGHNESS = 1.8;
const TILE_BITS = 5;

/**
 * How deep a ridge must be in each tile of the picture, from how uneven the tile is across the strokes. A mean of roots,
 * so that a texture that is everywhere counts, and a few letters or grid lines do not.
 */
function roughness({ width, height, data }: Grey): { width: number; data: Float32Array } {
  const across = (width >> TILE_BITS) + 1;
  const down = (height >> TILE_BITS) + 1;
  const sums = new Float32Array(across * down);
  const counts = new Float32Array(across * down);
  for (let y = 1; y < height - 1; y += 3)
    for (let x = NEAR; x < width - NEAR; x++) {
      const i = y * width + x;
      const middle = data[i - width]! + data[i]! + data[i + width]!;
      const left = data[i - width - NEAR]! + data[i - NEAR]! + data[i + width - NEAR]!;
      const right = data[i - width + NEAR]! + data[i + NEAR]! + data[i + width + NEAR]!;
      const tile = (y >> TILE_BITS) * across + (x >> TILE_BITS);
      sums[tile]! += Math.sqrt(Math.abs(middle - (left + right) / 2));
      counts[tile]!++;
    }
  for (let i = 0; i < sums.length; i++)
    sums[i] = counts[i] ? (OVER_ROUGHNESS * ROWS * (sums[i]! / counts[i]!) ** 2) / 3 : 0;
  return { width: across, data: sums };
}

const between = (l: number, c: number, r: number): number => {
  const bend = l - 2 * c + r;
  return bend === 0 ? 0 : (0.5 * (l - r)) / bend;
};

type Growing = { y: number[]; x: number[]; strength: number[]; foreseen: number; next: Growing | null };

/** Rows a chain may go unseen: dashes, crossings and specks. */
const gapOf = (points: number): number => (points < 4 ? 1 : Math.min(11, 1 + points / 3));
const SLOPE_POINTS = 14;

/** Hangs each row's ridge points onto the chains that foresaw them. */
class ChainLinker {
  #width: number;
  #shortest: number;
  #row = 0;
  #growing: Growing[] = [];
  #cells: (Growing | null)[];
  #done: Chain[] = [];
  #added: Growing[] = [];

  constructor(width: number, shortest: number) {
    this.#width = width;
    this.#shortest = shortest;
    this.#cells = Array.from({ length: width }, () => null);
  }

  startRow(y: number): void {
    this.#row = y;
    for (const g of this.#growing) {
      const cell = Math.round(g.foreseen);
      if (cell >= 0 && cell < this.#width) this.#cells[cell] = null;
    }
    const still: Growing[] = [];
    for (const g of [...this.#growing, ...this.#added]) {
      const last = g.y[g.y.length - 1]!;
      if (y - last > gapOf(g.y.length)) this.#close(g);
      else {
        g.foreseen = foresee(g, y);
        still.push(g);
      }
    }
    this.#added = [];
    this.#growing = still;
    for (const g of still) {
      const cell = Math.round(g.foreseen);
      if (cell < 0 || cell >= this.#width) continue;
      g.next = this.#cells[cell] ?? null;
      this.#cells[cell] = g;
    }
  }

  add(x: number, strength: number): void {
    const y = this.#row;
    const middle = Math.round(x);
    let best: Growing | undefined;
    let nearest = 2;
    for (let cell = Math.max(0, middle - 2); cell <= Math.min(this.#width - 1, middle + 2); cell++)
      for (let g = this.#cells[cell]; g; g = g.next) {
        const last = g.y[g.y.length - 1]!;
        if (last === y) continue;
        const off = Math.abs(g.foreseen - x);
        const reach = g.y.length < 6 ? 1.6 : 1.1 + 0.08 * (y - last);
        if (off <= reach && off < nearest) {
          nearest = off;
          best = g;
        }
      }
    if (!best) this.#added.push({ y: [y], x: [x], strength: [strength], foreseen: x, next: null });
    else {
      best.y.push(y);
      best.x.push(x);
      best.strength.push(strength);
    }
  }

  finish(): Chain[] {
    for (const g of this.#growing) this.#close(g);
    for (const g of this.#added) this.#close(g);
    return this.#done;
  }

  #close({ y, x, strength }: Growing): void {
    const rows = y[y.length - 1]! - y[0]! + 1;
    if (rows >= this.#shortest && y.length >= 0.5 * rows) this.#done.push({ y, x, strength });
  }
}

/** Where a chain should be met in row `y`: its last points carried on straight. */
function foresee(g: Growing, y: number): number {
  const n = g.y.length;
  const from = Math.max(0, n - SLOPE_POINTS);
  const count = n - from;
  if (count < 4) return g.x[n - 1]!;
  let sy = 0;
  let sx = 0;
  let syy = 0;
  let sxy = 0;
  for (let i = from; i < n; i++) {
    const dy = g.y[i]! - y;
    const v = g.x[i]!;
    sy += dy;
    sx += v;
    syy += dy * dy;
    sxy += dy * v;
  }
  const det = count * syy - sy * sy;
  return det > 0 ? (sx * syy - sy * sxy) / det : sx / count;
}
