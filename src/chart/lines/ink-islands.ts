import type { Sheet } from '../sheet.ts';
import type { InkColour } from '../trace/likeness.ts';
import type { TracingTable } from '../trace/tracing-table.ts';

/** A connected piece of ink in the frame that is not the grid's; sheet pixels, edges included. */
export type InkIsland = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly area: number;
  /** spread along and across its longest direction (standard deviations), px */
  readonly long: number;
  readonly short: number;
  /** second moments of its pixels about their middle, px² */
  readonly moments: { readonly xx: number; readonly yy: number; readonly xy: number };
  /** indices of its pixels on the sheet; only of islands small enough to be a letter, a marker or a dash */
  readonly pixels: readonly number[];
};

/** Larger than any letter, marker or dash, as a share of the frame's longer side. */
const SMALL_SHARE = 0.075;

/**
 * Small islands of ink inside the frame: letters, markers, dashes. What is larger is a line and left out.
 * @param threshold ink from which on a pixel counts, 0..255
 */
export function inkIslands({ sheet, grid, bounds }: TracingTable, threshold: number): InkIsland[] {
  const { width, darkness } = sheet;
  const largest = SMALL_SHARE * Math.max(sheet.frameWidth, sheet.frameHeight);
  const [x0, x1] = [Math.ceil(bounds.left), Math.floor(bounds.right)];
  const [y0, y1] = [Math.ceil(bounds.top), Math.floor(bounds.bottom)];
  const isInk = new Uint8Array(sheet.width * sheet.height);
  for (let y = y0; y <= y1; y++)
    for (let x = x0, i = y * width + x0; x <= x1; x++, i++) if (darkness[i]! - grid.data[i]! > threshold) isInk[i] = 1;
  const islands: InkIsland[] = [];
  const queue: number[] = [];
  const around = [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1];
  for (let y = y0; y <= y1; y++)
    for (let x = x0; x <= x1; x++) {
      if (!isInk[y * width + x]) continue;
      queue.length = 0;
      queue.push(y * width + x);
      isInk[y * width + x] = 0;
      const box = { left: x, right: x, top: y, bottom: y };
      for (let k = 0; k < queue.length; k++) {
        const i = queue[k]!;
        const py = (i / width) | 0;
        const px = i - py * width;
        if (px < box.left) box.left = px;
        if (px > box.right) box.right = px;
        if (py > box.bottom) box.bottom = py;
        for (const d of around)
          if (isInk[i + d]) {
            isInk[i + d] = 0;
            queue.push(i + d);
          }
      }
      if (queue.length < 4 || box.right - box.left > largest || box.bottom - box.top > largest) continue;
      islands.push({ ...box, area: queue.length, ...spreads(queue, width), pixels: queue.slice() });
    }
  return islands;
}

/** Standard deviations of an island's pixels along and across its longest direction. */
function spreads(pixels: readonly number[], width: number): Pick<InkIsland, 'long' | 'short' | 'moments'> {
  let sx = 0,
    sy = 0,
    sxx = 0,
    syy = 0,
    sxy = 0;
  for (const i of pixels) {
    const y = (i / width) | 0;
    const x = i - y * width;
    sx += x;
    sy += y;
    sxx += x * x;
    syy += y * y;
    sxy += x * y;
  }
  const n = pixels.length;
  const vx = sxx / n - (sx / n) ** 2;
  const vy = syy / n - (sy / n) ** 2;
  const c = sxy / n - (sx / n) * (sy / n);
  const middle = (vx + vy) / 2;
  const apart = Math.hypot((vx - vy) / 2, c);
  return {
    long: Math.sqrt(Math.max(0, middle + apart)),
    short: Math.sqrt(Math.max(0, middle - apart)),
    moments: { xx: vx, yy: vy, xy: c },
  };
}

/** The mean ink of an island. */
export function inkOf(sheet: Sheet, { pixels }: Pick<InkIsland, 'pixels'>): InkColour {
  const mean = (c: 0 | 1 | 2) => Math.max(1, pixels.reduce((s, i) => s + sheet.ink[3 * i + c]!, 0) / pixels.length);
  return [mean(0), mean(1), mean(2)];
}

/** Direction in which an island spreads most, or places do; rad, -π/2..π/2. Source: principal axis of second moments. */
export const directionOf = ({ xx, yy, xy }: InkIsland['moments']): number => 0.5 * Math.atan2(2 * xy, xx - yy);
