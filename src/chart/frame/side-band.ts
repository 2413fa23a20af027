import { greyAt, type Photo } from '../../picture/raster.ts';
import type { PhotoPoint } from '../spaces.ts';

/** A line from corner to corner of the plot frame, and how the strip along it is laid out in the photo. */
export type SideAxis = {
  readonly start: PhotoPoint;
  /** unit vector along the side, and across it (a quarter turn clockwise as the photo is seen) */
  readonly along: readonly [number, number];
  readonly across: readonly [number, number];
  /** distance between the two corners */
  readonly length_px: number;
};

/**
 * The strip of a photo along a side as a small picture: a column every `step_px` along the line from corner to corner
 * and a little beyond both, a row every `pitch_px` across it.
 */
export type SideBand = SideAxis & {
  readonly columns: number;
  /** odd; the middle row lies on the line, or on the path that was followed */
  readonly rows: number;
  readonly step_px: number;
  readonly pitch_px: number;
  /** distance along the side of the first column, negative: before the first corner */
  readonly first_px: number;
  /** brightness, column by column */
  readonly brightness: Float32Array;
};

export type Polarity = 'dark' | 'light';

/** The straight line between a side's two ends [px of the photo], with the directions along and across it. */
export function sideAxis(start: PhotoPoint, end: PhotoPoint): SideAxis {
  const length_px = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const along = [(end[0] - start[0]) / length_px, (end[1] - start[1]) / length_px] as const;
  return { start, along, across: [-along[1], along[0]], length_px };
}

/** A side this long still shows its line in the half-size picture. */
const LONG_SIDE_PX = 1000;

/** The whole strip, at half size along a long side. @param reach_px how far across; @param beyond_px how far past both corners */
export function sampleWideBand(photo: Photo, axis: SideAxis, reach_px: number, beyond_px: number): SideBand {
  const coarse = axis.length_px >= LONG_SIDE_PX;
  const pitch_px = coarse ? 2 : 1;
  const step_px = Math.max(pitch_px, axis.length_px / 280);
  const columns = Math.floor((axis.length_px + 2 * beyond_px) / step_px) + 1;
  const rows = 2 * Math.round(reach_px / pitch_px) + 1;
  return sample(photo, axis, { columns, rows, step_px, pitch_px, first_px: -beyond_px, coarse, middle: () => 0 });
}

/** A narrow strip along a path found in the wide one, in the full picture. @param path distance across at a distance along */
export function sampleAlongPath(photo: Photo, wide: SideBand, path: (t: number) => number, reach_px: number): SideBand {
  const step_px = Math.max(1, wide.length_px / 420);
  const columns = Math.floor((wide.length_px - 2 * wide.first_px) / step_px) + 1;
  const rows = 2 * reach_px + 1;
  return sample(photo, wide, {
    columns,
    rows,
    step_px,
    pitch_px: 1,
    first_px: wide.first_px,
    coarse: false,
    middle: path,
  });
}

type Layout = Pick<SideBand, 'columns' | 'rows' | 'step_px' | 'pitch_px' | 'first_px'> & {
  coarse: boolean;
  middle: (t: number) => number;
};

function sample(
  photo: Photo,
  { start, along, across, length_px }: SideAxis,
  { coarse, middle, ...layout }: Layout,
): SideBand {
  const { columns, rows, step_px, pitch_px, first_px } = layout;
  const plane = coarse ? photo.halfGrey : photo.grey;
  const shrink = coarse ? 0.5 : 1;
  const offset = coarse ? -0.25 : 0;
  const brightness = new Float32Array(columns * rows);
  const looks = Math.max(1, Math.min(3, Math.round(step_px / (1.4 * pitch_px))));
  const middleRow = (rows - 1) / 2;
  for (let c = 0; c < columns; c++)
    for (let k = 0; k < looks; k++) {
      const t = first_px + (c + (k + 0.5) / looks - 0.5) * step_px;
      const s0 = middle(t) - middleRow * pitch_px;
      let x = (start[0] + along[0] * t + across[0] * s0) * shrink + offset;
      let y = (start[1] + along[1] * t + across[1] * s0) * shrink + offset;
      for (let r = 0; r < rows; r++, x += across[0] * pitch_px * shrink, y += across[1] * pitch_px * shrink)
        brightness[c * rows + r]! += greyAt(plane, x, y) / looks;
    }
  return { start, along, across, length_px, ...layout, brightness };
}

/**
 * How much darker (or lighter) than both its sides a line through each cell is, as a fraction of the paper beside it.
 * Lines from one to about nine cells wide; an edge, lighter on one side only, gives nothing.
 */
export function ridgesAcross({ columns, rows, brightness }: SideBand, polarity: Polarity): Float32Array {
  const out = new Float32Array(columns * rows);
  const sum = new Float32Array(rows + 1);
  const dark = polarity === 'dark';
  for (let c = 0; c < columns; c++) {
    const base = c * rows;
    for (let r = 0; r < rows; r++) sum[r + 1] = sum[r]! + brightness[base + r]!;
    for (const { half, gap, side } of RIDGE_SHAPES) {
      const edge = half + gap + side;
      for (let r = edge; r < rows - edge; r++) {
        const middle = (sum[r + half + 1]! - sum[r - half]!) / (2 * half + 1);
        const before = (sum[r - half - gap]! - sum[r - edge]!) / side;
        const after = (sum[r + edge + 1]! - sum[r + half + gap + 1]!) / side;
        const depth = dark ? Math.min(before, after) - middle : middle - Math.max(before, after);
        const relative = depth / Math.max(20, dark ? (before + after) / 2 : middle);
        if (relative > out[base + r]!) out[base + r] = relative;
      }
    }
  }
  return out;
}

/** Half width of the line, gap of blur beside it, width of the paper looked at: cells. */
const RIDGE_SHAPES = [
  { half: 0, gap: 1, side: 2 },
  { half: 1, gap: 1, side: 3 },
  { half: 2, gap: 2, side: 3 },
  { half: 4, gap: 2, side: 4 },
] as const;
