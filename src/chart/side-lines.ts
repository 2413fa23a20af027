import { bestPath } from './best-path.ts';
import { ridgesAcross, type Polarity, type SideBand } from './side-band.ts';
import { fitSmoothLine, type SmoothLine } from './smooth-line.ts';

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
export function findSideLines(band: SideBand, polarity: Polarity, mayMiss_px: number, count = 5): SideLine[] {
  const ridges = ridgesAcross(band, polarity);
  const noise = noiseOf(ridges);
  const { columns, rows } = band;
  const cap = capOf(ridges, columns, rows);
  const reward = new Float32Array(ridges.length);
  for (let c = 0; c < columns; c++) {
    const tau = Math.min(1, Math.max(0, (band.first_px + c * band.step_px) / band.length_px));
    // between the corners a bent side may bow out further than a finger may miss
    const reach = mayMiss_px + 4 * tau * (1 - tau) * Math.max(0, band.reach_px - mayMiss_px);
    for (let r = 0; r < rows; r++)
      reward[c * rows + r] = Math.abs(r - band.reach_px) <= reach ? Math.min(cap, ridges[c * rows + r]!) : -cap;
  }
  const lines: SideLine[] = [];
  for (let k = 0; k < count; k++) {
    const { row, gathered } = bestPath(reward, columns, rows, 0.15 * cap);
    if (!(gathered > 0)) break;
    const line = measure(band, polarity, ridges, row, noise);
    if (line) lines.push(line);
    for (let c = 0; c < columns; c++)
      for (let r = Math.max(0, row[c]! - 4); r <= Math.min(rows - 1, row[c]! + 4); r++)
        reward[c * rows + r] = Math.min(reward[c * rows + r]!, -0.2 * cap);
  }
  return lines;
}

/** Sub-pixel course, strength and continuity of the line along a path of cells. */
function measure(
  band: SideBand,
  polarity: Polarity,
  ridges: Float32Array,
  row: Int16Array,
  noise: number,
): SideLine | null {
  const { columns, rows, brightness, reach_px } = band;
  const inner = insideColumns(band);
  const depths = inner.map((c) => ridges[c * rows + row[c]!]!);
  const contrast = median(depths);
  if (!(contrast > 0)) return null;
  const profile = meanProfile(band, row, inner, polarity);
  const t = new Float64Array(columns);
  const s = new Float64Array(columns);
  const weight = new Float64Array(columns);
  const sign = polarity === 'dark' ? 1 : -1;
  const half = Math.max(2, Math.round(profile.width * 0.8) + 1);
  for (let c = 0; c < columns; c++) {
    t[c] = band.first_px + c * band.step_px;
    const r0 = row[c]!;
    const depth = ridges[c * rows + r0]!;
    s[c] = r0 - reach_px;
    if (depth < 0.35 * contrast || r0 < half + 3 || r0 >= rows - half - 3) continue;
    const base = c * rows;
    const paper =
      (brightness[base + r0 - half - 1]! +
        brightness[base + r0 - half - 2]! +
        brightness[base + r0 + half + 1]! +
        brightness[base + r0 + half + 2]!) /
      4;
    let sum = 0;
    let moment = 0;
    for (let d = -half; d <= half; d++) {
      const ink = Math.max(0, sign * (paper - brightness[base + r0 + d]!) - 0.25 * depth * paper);
      sum += ink;
      moment += ink * d;
    }
    if (!(sum > 0)) continue;
    s[c] = r0 - reach_px + moment / sum;
    weight[c] = Math.min(1, depth / contrast);
  }
  const line = fitSmoothLine(t, s, weight, { from: t[0]!, to: t[columns - 1]!, reach: 1.2, intervals: 12 });
  if (!line) return null;
  const seen = inner.filter((c) => weight[c]! > 0 && Math.abs(s[c]! - line.value(t[c]!)) < 1.5).length / inner.length;
  return {
    line,
    middle_px: line.value(band.length_px / 2),
    strength: profile.ink,
    seen,
    contrast,
    clearness: contrast / noise,
  };
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
  band: SideBand,
  row: Int16Array,
  columns: number[],
  polarity: Polarity,
): { width: number; ink: number } {
  const reach = 9;
  const sums = new Float64Array(2 * reach + 1);
  let used = 0;
  for (const c of columns) {
    const r0 = row[c]!;
    if (r0 < reach || r0 >= band.rows - reach) continue;
    used++;
    for (let d = -reach; d <= reach; d++) sums[d + reach]! += band.brightness[c * band.rows + r0 + d]!;
  }
  if (!used) return { width: 2, ink: 0 };
  const ordered = Array.from(sums, (v) => v / used).sort((a, b) => a - b);
  const paper = polarity === 'dark' ? ordered[Math.round(1.5 * reach)]! : ordered[Math.round(0.5 * reach)]!;
  const depth = Array.from(sums, (v) => (polarity === 'dark' ? paper - v / used : v / used - paper));
  const deepest = Math.max(depth[reach - 1]!, depth[reach]!, depth[reach + 1]!);
  let width = 0;
  let ink = 0;
  for (const side of [-1, 1])
    for (let d = side < 0 ? 0 : 1; d <= reach; d++) {
      const v = depth[reach + side * d]!;
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

export function median(values: number[]): number {
  if (!values.length) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1]!;
}
