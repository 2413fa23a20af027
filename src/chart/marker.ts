import type { GridInk } from './grid-ink.ts';
import type { Sheet } from './sheet.ts';

/** The look of one printed marker (a circle, square, triangle, dot), as a small square of ink around its middle. */
export type Marker = {
  readonly x: number;
  readonly y: number;
  /** half the square's side */
  readonly radius: number;
  /** (2·radius + 1)² ink values, row by row */
  readonly ink: Float32Array;
};

export type MarkerPlace = {
  readonly x: number;
  readonly y: number;
  /** correlation with the pattern, 0..1 */ readonly alike: number;
};

const LARGEST_HALF = 18;

/** Ink of the sheet without its grid; NaN on the frame's own lines, where nothing can be told. */
export function inkWithoutGrid(sheet: Sheet, grid: GridInk, frameHalf: number): Float32Array {
  const { width, height, darkness, margin, frameWidth, frameHeight } = sheet;
  const out = new Float32Array(width * height);
  for (let i = 0; i < out.length; i++) out[i] = Math.max(0, darkness[i]! - grid.data[i]!);
  const blot = (x: number, y: number) => {
    if (x >= 0 && y >= 0 && x < width && y < height) out[y * width + x] = NaN;
  };
  for (let d = -Math.ceil(frameHalf); d <= Math.ceil(frameHalf); d++) {
    for (let x = margin - 2; x <= margin + frameWidth + 2; x++) {
      blot(x, margin + d);
      blot(x, margin + frameHeight + d);
    }
    for (let y = margin - 2; y <= margin + frameHeight + 2; y++) {
      blot(margin + d, y);
      blot(margin + frameWidth + d, y);
    }
  }
  return out;
}

/**
 * The marker under a tap: a small island of ink.
 * @returns null where the ink there runs on (a line), or is too small or too large for a marker
 */
export function markerAt(sheet: Sheet, ink: Float32Array, x: number, y: number, reach: number): Marker | null {
  const { width, height } = sheet;
  const at = (px: number, py: number) =>
    px < 0 || py < 0 || px >= width || py >= height ? 0 : ink[py * width + px]! || 0;
  const cx = Math.round(x);
  const cy = Math.round(y);
  let darkest = 0;
  const look = Math.ceil(reach) + 8;
  for (let dy = -look; dy <= look; dy++)
    for (let dx = -look; dx <= look; dx++) darkest = Math.max(darkest, at(cx + dx, cy + dy));
  if (darkest < 25) return null;
  const threshold = 0.38 * darkest;
  // start from the nearest inked pixel
  let start: [number, number] | null = null;
  for (let r = 0; r <= look && !start; r++)
    for (let dy = -r; dy <= r && !start; dy++)
      for (let dx = -r; dx <= r; dx++)
        if (Math.max(Math.abs(dx), Math.abs(dy)) === r && at(cx + dx, cy + dy) >= threshold) {
          start = [cx + dx, cy + dy];
          break;
        }
  if (!start) return null;
  const box = { left: start[0], right: start[0], top: start[1], bottom: start[1] };
  const seen = new Set<number>([start[1] * width + start[0]]);
  const queue = [start];
  while (queue.length) {
    const [px, py] = queue.pop()!;
    box.left = Math.min(box.left, px);
    box.right = Math.max(box.right, px);
    box.top = Math.min(box.top, py);
    box.bottom = Math.max(box.bottom, py);
    if (box.right - box.left > 2 * LARGEST_HALF || box.bottom - box.top > 2 * LARGEST_HALF) return null;
    // a gap of one pixel still holds a thin ring together
    for (let dy = -2; dy <= 2; dy++)
      for (let dx = -2; dx <= 2; dx++) {
        const key = (py + dy) * width + px + dx;
        if (seen.has(key) || at(px + dx, py + dy) < threshold) continue;
        seen.add(key);
        queue.push([px + dx, py + dy]);
      }
  }
  const w = box.right - box.left + 1;
  const h = box.bottom - box.top + 1;
  if (Math.max(w, h) < 3 || Math.max(w, h) > 2.2 * Math.min(w, h) + 1) return null;
  const mx = (box.left + box.right) / 2;
  const my = (box.top + box.bottom) / 2;
  const radius = Math.ceil(Math.max(w, h) / 2) + 2;
  return { x: mx, y: my, radius, ink: patch(sheet, ink, mx, my, radius) };
}

function patch({ width, height }: Sheet, ink: Float32Array, x: number, y: number, radius: number): Float32Array {
  const size = 2 * radius + 1;
  const out = new Float32Array(size * size);
  const ix = Math.round(x);
  const iy = Math.round(y);
  for (let dy = -radius; dy <= radius; dy++)
    for (let dx = -radius; dx <= radius; dx++) {
      const px = ix + dx;
      const py = iy + dy;
      out[(dy + radius) * size + dx + radius] =
        px < 0 || py < 0 || px >= width || py >= height ? NaN : ink[py * width + px]!;
    }
  return out;
}

/** Every place in and on the frame that looks like the marker, the likest first. */
export function findMarkers(sheet: Sheet, ink: Float32Array, marker: Marker, atLeast: number): MarkerPlace[] {
  const { width, height, margin, frameWidth, frameHeight } = sheet;
  const { radius } = marker;
  const size = 2 * radius + 1;
  const sums = integralOf(ink, width, height);
  const wanted = marker.ink.reduce((s, v) => s + (v || 0), 0);
  const found: MarkerPlace[] = [];
  const edge = radius + 1;
  for (let y = Math.max(edge, margin - 3); y <= Math.min(height - edge - 1, margin + frameHeight + 3); y++)
    for (let x = Math.max(edge, margin - 3); x <= Math.min(width - edge - 1, margin + frameWidth + 3); x++) {
      const sum = boxSum(sums, width, x - radius, y - radius, size);
      if (sum < 0.45 * wanted || sum > 1.9 * wanted) continue;
      const alike = correlation(sheet, ink, marker, x, y);
      if (alike >= atLeast) found.push({ x, y, alike });
    }
  found.sort((a, b) => b.alike - a.alike);
  const kept: MarkerPlace[] = [];
  for (const f of found)
    if (!kept.some((k) => Math.max(Math.abs(k.x - f.x), Math.abs(k.y - f.y)) < radius)) kept.push(f);
  return kept.map((k) => settle(sheet, ink, marker, k));
}

function correlation(
  { width }: Sheet,
  ink: Float32Array,
  { radius, ink: pattern }: Marker,
  x: number,
  y: number,
): number {
  const size = 2 * radius + 1;
  let n = 0,
    sa = 0,
    sb = 0,
    saa = 0,
    sbb = 0,
    sab = 0;
  for (let dy = -radius; dy <= radius; dy++) {
    const row = (y + dy) * width + x;
    const pat = (dy + radius) * size + radius;
    for (let dx = -radius; dx <= radius; dx++) {
      const a = ink[row + dx]!;
      const b = pattern[pat + dx]!;
      if (a !== a || b !== b) continue;
      n++;
      sa += a;
      sb += b;
      saa += a * a;
      sbb += b * b;
      sab += a * b;
    }
  }
  const va = saa - (sa * sa) / n;
  const vb = sbb - (sb * sb) / n;
  return n > 0.4 * size * size && va > 0 && vb > 0 ? (sab - (sa * sb) / n) / Math.sqrt(va * vb) : 0;
}

/** Between pixels: the top of a parabola through the correlations around. */
function settle(sheet: Sheet, ink: Float32Array, marker: Marker, at: MarkerPlace): MarkerPlace {
  const f = (dx: number, dy: number) => correlation(sheet, ink, marker, at.x + dx, at.y + dy);
  const shift = (a: number, b: number, c: number) => {
    const bottom = a - 2 * b + c;
    return bottom < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (a - c)) / bottom)) : 0;
  };
  // the pattern's own middle lies between pixels too
  const ox = marker.x - Math.round(marker.x);
  const oy = marker.y - Math.round(marker.y);
  return {
    x: at.x + shift(f(-1, 0), at.alike, f(1, 0)) + ox,
    y: at.y + shift(f(0, -1), at.alike, f(0, 1)) + oy,
    alike: at.alike,
  };
}

function integralOf(ink: Float32Array, width: number, height: number): Float64Array {
  const out = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y++) {
    let row = 0;
    for (let x = 0; x < width; x++) {
      row += ink[y * width + x]! || 0;
      out[(y + 1) * (width + 1) + x + 1] = out[y * (width + 1) + x + 1]! + row;
    }
  }
  return out;
}

const boxSum = (sums: Float64Array, width: number, x: number, y: number, size: number): number => {
  const w = width + 1;
  return sums[(y + size) * w + x + size]! - sums[y * w + x + size]! - sums[(y + size) * w + x]! + sums[y * w + x]!;
};
