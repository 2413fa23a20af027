import { greyAt, type Grey } from './raster.ts';
import type { PhotoPoint } from './spaces.ts';

/**
 * The strip of a photo along one side of the plot frame, as a small picture: a column every `step` pixels along the
 * line from corner to corner (and a little beyond both), a row for every pixel across it.
 */
export type SideBand = {
  readonly start: PhotoPoint;
  /** unit vector along the side, and across it (a quarter turn clockwise as the photo is seen) */
  readonly along: readonly [number, number];
  readonly across: readonly [number, number];
  /** distance between the two corners */
  readonly length_px: number;
  readonly columns: number;
  readonly rows: number;
  readonly step_px: number;
  /** distance along the side of the first column, negative: before the first corner */
  readonly first_px: number;
  /** rows reach from −reach to +reach across */
  readonly reach_px: number;
  /** brightness, column by column */
  readonly brightness: Float32Array;
};

/** Samples the strip. @param reach_px how far across; @param beyond_px how far past both corners */
export function sampleSideBand(
  grey: Grey,
  start: PhotoPoint,
  end: PhotoPoint,
  reach_px: number,
  beyond_px: number,
): SideBand {
  const length_px = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const along = [(end[0] - start[0]) / length_px, (end[1] - start[1]) / length_px] as const;
  const across = [-along[1], along[0]] as const;
  const step_px = Math.max(1, length_px / 450);
  const first_px = -beyond_px;
  const columns = Math.floor((length_px + 2 * beyond_px) / step_px) + 1;
  const rows = 2 * Math.round(reach_px) + 1;
  const brightness = new Float32Array(columns * rows);
  const looks = Math.max(1, Math.round(step_px / 1.3));
  for (let c = 0; c < columns; c++) {
    for (let k = 0; k < looks; k++) {
      const t = first_px + (c + (k + 0.5) / looks - 0.5) * step_px;
      const x = start[0] + along[0] * t;
      const y = start[1] + along[1] * t;
      for (let r = 0; r < rows; r++) {
        const s = r - Math.round(reach_px);
        brightness[c * rows + r]! += greyAt(grey, x + across[0] * s, y + across[1] * s) / looks;
      }
    }
  }
  return {
    start,
    along,
    across,
    length_px,
    columns,
    rows,
    step_px,
    first_px,
    reach_px: Math.round(reach_px),
    brightness,
  };
}

export type Polarity = 'dark' | 'light';

/**
 * How much darker (or lighter) than both its sides a line through each cell is, as a fraction of the paper beside it.
 * Lines from one to about nine pixels wide; an edge, lighter on one side only, gives nothing.
 */
export function ridgesAcross(band: SideBand, polarity: Polarity): Float32Array {
  const { columns, rows, brightness } = band;
  const out = new Float32Array(columns * rows);
  const sum = new Float32Array(rows + 1);
  for (let c = 0; c < columns; c++) {
    const base = c * rows;
    for (let r = 0; r < rows; r++) sum[r + 1] = sum[r]! + brightness[base + r]!;
    for (const { half, gap, side } of RIDGE_SHAPES) {
      const edge = half + gap + side;
      for (let r = edge; r < rows - edge; r++) {
        const middle = (sum[r + half + 1]! - sum[r - half]!) / (2 * half + 1);
        const before = (sum[r - half - gap]! - sum[r - edge]!) / side;
        const after = (sum[r + edge + 1]! - sum[r + half + gap + 1]!) / side;
        const depth = polarity === 'dark' ? Math.min(before, after) - middle : middle - Math.max(before, after);
        const relative = depth / (polarity === 'dark' ? Math.max(20, (before + after) / 2) : Math.max(20, middle));
        if (relative > out[base + r]!) out[base + r] = relative;
      }
    }
  }
  return out;
}

/** Half width of the line, gap of blur beside it, width of the paper looked at: pixels. */
const RIDGE_SHAPES = [
  { half: 0, gap: 1, side: 2 },
  { half: 1, gap: 1, side: 3 },
  { half: 2, gap: 2, side: 3 },
  { half: 4, gap: 2, side: 4 },
] as const;
