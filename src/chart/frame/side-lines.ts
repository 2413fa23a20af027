import { bestPath } from '../trace/best-path.ts';
import type { Photo } from '../../picture/raster.ts';
import { ridgesAcross, sampleAlongPath, type Polarity, type SideBand } from './side-band.ts';
import { fitSmoothLine, type SmoothLine } from '../trace/smooth-line.ts';

/** A long line found in the strip along a side: maybe the side itself, maybe a grid line next to it. */
export type SideLine = {
  /** distance across the strip at a distance along it, both in pixels; `value(t)` of the fitted line */
  readonly line: SmoothLine;
  /** its distance across the strip half way along */
  readonly middle_px: number;
  /** darkness against the paper times width: pixels of full black */
  readonly strength: number;
  /** share of the side's length where the line is seen and lies on its smooth course, 0..1 */
  readonly seen: number;
  /** typical darkness against the paper, 0..1, and in multiples of the strip's noise */
  readonly contrast: number;
  readonly clearness: number;
};

/**
 * The long lines in a strip, most prominent first.
 * @param mayMiss_px how far from the hinted corners the line's ends may lie
 */
export function findSideLines(
  photo: Photo,
  band: SideBand,
  polarity: Polarity,
  mayMiss_px: number,
  count = 4,
): SideLine[] {
  const ridges = ridgesAcross(band, polarity);
  const noise = noiseOf(ridges);
  const { columns, rows, pitch_px } = band;
  const middleRow = (rows - 1) / 2;
  const cap = capOf(ridges, columns, rows);
  const reward = new Float32Array(ridges.length);
  for (let c = 0; c < columns; c++) {
    const tau = Math.min(1, Math.max(0, (band.first_px + c * band.step_px) / band.length_px));
    // between the corners a bent side may bow out further than a finger may miss
    const reach = mayMiss_px + 4 * tau * (1 - tau) * Math.max(0, middleRow * pitch_px - mayMiss_px);
    for (let r = 0; r < rows; r++)
      reward[c * rows + r] = Math.abs(r - middleRow) * pitch_px <= reach ? Math.min(cap, ridges[c * rows + r]!) : -cap;
  }
  const lines: SideLine[] = [];
  const clear = Math.ceil(5 / pitch_px);
  let most = 0;
  for (let k = 0; k < count; k++) {
    const { row, gathered } = bestPath(reward, columns, rows, 0.15 * cap);
    if (!(gathered > 0.25 * most)) break;
    most = Math.max(most, gathered);
    const line = measure(photo, band, polarity, row, noise);
    // a second way along the shoulder of the same thick or blurred line is no second line
    if (line && !lines.some((l) => Math.abs(l.middle_px - line.middle_px) < 5)) lines.push(line);
    for (let c = 0; c < columns; c++)
      for (let r = Math.max(0, row[c]! - clear); r <= Math.min(rows - 1, row[c]! + clear); r++)
        reward[c * rows + r] = Math.min(reward[c * rows + r]!, -0.2 * cap);
  }
  return lines;
}

const NARROW_PX = 13;

/** Sub-pixel course, strength and continuity of the line along a path of cells, looked at closely. */
function measure(photo: Photo, wide: SideBand, polarity: Polarity, row: Int16Array, noise: number): SideLine | null {
  const middleRow = (wide.rows - 1) / 2;
  const path = (t: number) => {
    const at = Math.min(wide.columns - 1.001, Math.max(0, (t - wide.first_px) / wide.step_px));
    const i = Math.floor(at);
    return (row[i]! + (row[i + 1]! - row[i]!) * (at - i) - middleRow) * wide.pitch_px;
  };
  const band = sampleAlongPath(photo, wide, path, NARROW_PX);
  const { columns, rows, brightness } = band;
  const inner = insideColumns(band);
  const { width, ink } = meanProfile(band, inner, polarity);
  const half = Math.min(NARROW_PX - 3, Math.max(2, Math.round(width * 0.8) + 1));
  const looks = Array.from({ length: columns }, (_, c) =>
    lookAt(brightness.subarray(c * rows, (c + 1) * rows), half, polarity),
  );
  const contrast = median(inner.map((c) => looks[c]!.depth));
  if (!(contrast > 0)) return null;
  const t = Float64Array.from(looks, (_, c) => band.first_px + c * band.step_px);
  const s = Float64Array.from(looks, (l, c) => path(t[c]!) + l.offset);
  const weight = Float64Array.from(looks, (l) => (l.depth < 0.35 * contrast ? 0 : Math.min(1, l.depth / contrast)));
  const options = { from: t[0]!, to: t[columns - 1]!, reach: 1.2, intervals: 12 };
  const core = fitSmoothLine(
    t,
    s,
    weight.map((w, c) => (inner.includes(c) ? w : 0)),
    options,
  );
  if (!core) return null;
  // past the corners a label or another frame's line may lie in the way: only what continues the line counts
  const first = inner[0]!;
  const last = inner.at(-1)!;
  const goesOn = (c: number, from: number) =>
    Math.abs(s[c]! - (core.value(t[from]!) + core.slope(t[from]!) * (t[c]! - t[from]!))) <
    1.5 + 0.03 * Math.abs(t[c]! - t[from]!);
  for (let c = 0; c < first; c++) if (!goesOn(c, first)) weight[c] = 0;
  for (let c = last + 1; c < columns; c++) if (!goesOn(c, last)) weight[c] = 0;
  const line = fitSmoothLine(t, s, weight, options);
  if (!line) return null;
  const seen = inner.filter((c) => weight[c]! > 0 && Math.abs(s[c]! - line.value(t[c]!)) < 1.5).length / inner.length;
  return {
    line,
    middle_px: line.value(band.length_px / 2),
    strength: ink,
    seen,
    contrast,
    clearness: contrast / noise,
  };
}

/** Middle and relative depth of a line in one cross-section whose middle it should be near. */
function lookAt(section: Float32Array, half: number, polarity: Polarity): { offset: number; depth: number } {
  const sign = polarity === 'dark' ? 1 : -1;
  const m = NARROW_PX;
  let top = m;
  for (let r = m - 3; r <= m + 3; r++) {
    const v = section[r - 1]! + 2 * section[r]! + section[r + 1]!;
    const w = section[top - 1]! + 2 * section[top]! + section[top + 1]!;
    if (sign * (w - v) > 0.4 * Math.abs(r - top)) top = r;
  }
  const at = (r: number) => section[Math.min(2 * m, Math.max(0, r))]!;
  const before = (at(top - half - 1) + at(top - half - 2)) / 2;
  const after = (at(top + half + 1) + at(top + half + 2)) / 2;
  const paper = (before + after) / 2;
  const nearer = sign > 0 ? Math.min(before, after) : Math.max(before, after);
  const depth = sign * (nearer - (at(top - 1) + 2 * at(top) + at(top + 1)) / 4);
  let sum = 0;
  let moment = 0;
  for (let d = -half; d <= half; d++) {
    const ink = Math.max(0, sign * (paper - at(top + d)) - 0.25 * depth);
    sum += ink;
    moment += ink * d;
  }
  const scale = Math.max(20, sign > 0 ? paper : at(top));
  return { offset: top - m + (sum > 0 ? moment / sum : 0), depth: depth / scale };
}

/** Columns between the corners, clear of both by a finger's width where the side is long enough. */
function insideColumns(band: SideBand): number[] {
  const margin = Math.min(40, 0.06 * band.length_px);
  const columns: number[] = [];
  for (let c = 0; c < band.columns; c++) {
    const t = band.first_px + c * band.step_px;
    if (t >= margin && t <= band.length_px - margin) columns.push(c);
  }
  return columns;
}

/** The line's cross-section averaged along it: width at half depth, and darkness summed across it. */
function meanProfile(
  { rows, brightness }: SideBand,
  columns: number[],
  polarity: Polarity,
): { width: number; ink: number } {
  const sums = new Float64Array(rows);
  for (const c of columns) for (let r = 0; r < rows; r++) sums[r]! += brightness[c * rows + r]! / columns.length;
  const ordered = Array.from(sums).sort((a, b) => a - b);
  const paper = ordered[Math.round((polarity === 'dark' ? 0.75 : 0.25) * (rows - 1))]!;
  const depth = Array.from(sums, (v) => (polarity === 'dark' ? paper - v : v - paper));
  const m = NARROW_PX;
  const deepest = Math.max(depth[m - 1]!, depth[m]!, depth[m + 1]!);
  let width = 0;
  let ink = 0;
  for (const side of [-1, 1])
    for (let d = side < 0 ? 0 : 1; d <= NARROW_PX; d++) {
      const v = depth[m + side * d]!;
      if (v < 0.15 * deepest) break;
      if (v > 0.5 * deepest) width++;
      ink += v;
    }
  return { width: Math.max(1, width), ink: ink / Math.max(20, paper) };
}

/** Spread of the ridge map where there is nothing: most of a strip is empty paper. */
function noiseOf(ridges: Float32Array): number {
  const sample: number[] = [];
  for (let i = 0; i < ridges.length; i += 7) sample.push(ridges[i]!);
  return Math.max(0.002, 1.4826 * median(sample));
}

/** No cell counts for more than a typical strong one, so that a blot or a letter can't buy a path. */
function capOf(ridges: Float32Array, columns: number, rows: number): number {
  const strongest: number[] = [];
  for (let c = 0; c < columns; c++) {
    let most = 0;
    for (let r = 0; r < rows; r++) most = Math.max(most, ridges[c * rows + r]!);
    strongest.push(most);
  }
  return Math.max(0.01, median(strongest));
}

function median(values: number[]): number {
  if (!values.length) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1]!;
}
