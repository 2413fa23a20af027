import type { GridInk } from '../grid/grid-ink.ts';
import type { Sheet } from '../sheet.ts';

/** The look of one printed marker (a circle, square, triangle, dot), as a small square of ink around its middle. */
export type Marker = {
  readonly x: number;
  readonly y: number;
  /** half the square's side */
  readonly radius: number;
  /** (2·radius + 1)² ink values, row by row */
  readonly ink: Float32Array;
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
