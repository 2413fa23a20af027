import { bestPath } from '../trace/best-path.ts';
import type { Photo } from '../../picture/raster.ts';
import { sampleAlongPath, type SideBand } from './side-band.ts';
import { fitSmoothLine, type SmoothLine } from '../trace/smooth-line.ts';

/** The boundary of a tinted panel that has no printed line: paper on one side, tint on the other. */
export type SideEdge = {
  readonly line: SmoothLine;
  readonly middle_px: number;
  /** share of the side where the step is seen on its smooth course, 0..1 */
  readonly seen: number;
  /** typical step against the paper, 0..1 */
  readonly contrast: number;
};

const LOOK = 5;
/** A bigger step is the sheet's own edge against the table. */
const LARGEST_STEP = 0.45;
const SMALLEST_STEP = 0.02;

/** The clearest long step of brightness in a strip, or null. @param mayMiss_px how far its ends may lie from the corners */
export function findSideEdge(photo: Photo, band: SideBand, mayMiss_px: number): SideEdge | null {
  const { columns, rows, pitch_px } = band;
  const middleRow = (rows - 1) / 2;
  const bare = withoutLines(band);
  let best: SideEdge | null = null;
  for (const sign of [1, -1]) {
    const reward = new Float32Array(columns * rows);
    for (let c = 0; c < columns; c++) {
      const inside = bare.subarray(c * rows, (c + 1) * rows);
      const tau = Math.min(1, Math.max(0, (band.first_px + c * band.step_px) / band.length_px));
      const reach = mayMiss_px + 4 * tau * (1 - tau) * Math.max(0, middleRow * pitch_px - mayMiss_px);
      for (let r = 0; r < rows; r++)
        reward[c * rows + r] =
          Math.abs(r - middleRow) * pitch_px > reach ? -0.2 : Math.min(0.2, stepAt(inside, r, sign));
    }
    const { row } = bestPath(reward, columns, rows, 0.02);
    const edge = measure(photo, band, row, sign);
    if (edge && (!best || edge.contrast * edge.seen > best.contrast * best.seen)) best = edge;
  }
  const clear =
    best &&
    best.seen > 0.65 &&
    best.contrast > SMALLEST_STEP &&
    best.contrast < LARGEST_STEP &&
    best.line.residual < 1.2;
  return clear ? best : null;
}

/** The flank of a line is no edge: lines are wiped out before edges are looked for, by a running median across. */
function withoutLines({ columns, rows, brightness }: SideBand): Float32Array {
  const out = new Float32Array(brightness.length);
  for (let c = 0; c < columns; c++) out.set(medianFiltered(brightness.subarray(c * rows, (c + 1) * rows)), c * rows);
  return out;
}

const HALF_MEDIAN = 6;

function medianFiltered(section: Float32Array): Float32Array {
  const out = new Float32Array(section.length);
  const window = new Float32Array(2 * HALF_MEDIAN + 1);
  for (let r = 0; r < section.length; r++) {
    let n = 0;
    for (let k = Math.max(0, r - HALF_MEDIAN); k <= Math.min(section.length - 1, r + HALF_MEDIAN); k++) {
      const v = section[k]!;
      let i = n++;
      for (; i > 0 && window[i - 1]! > v; i--) window[i] = window[i - 1]!;
      window[i] = v;
    }
    out[r] = window[n >> 1]!;
  }
  return out;
}

function stepAt(section: Float32Array, r: number, sign: number): number {
  if (r < LOOK || r >= section.length - LOOK) return 0;
  let before = 0;
  let after = 0;
  for (let k = 1; k <= LOOK; k++) {
    before += section[r - k]!;
    after += section[r + k]!;
  }
  return (sign * (after - before)) / Math.max(100, after + before);
}

function measure(photo: Photo, wide: SideBand, row: Int16Array, sign: number): SideEdge | null {
  const middleRow = (wide.rows - 1) / 2;
  const path = (t: number) => {
    const at = Math.min(wide.columns - 1.001, Math.max(0, (t - wide.first_px) / wide.step_px));
    const i = Math.floor(at);
    return (row[i]! + (row[i + 1]! - row[i]!) * (at - i) - middleRow) * wide.pitch_px;
  };
  const reach = 12;
  const band = sampleAlongPath(photo, wide, path, reach);
  const { columns, rows, brightness } = band;
  const t = Float64Array.from({ length: columns }, (_, c) => band.first_px + c * band.step_px);
  const s = new Float64Array(columns);
  const step = new Float64Array(columns);
  for (let c = 0; c < columns; c++) {
    const section = brightness.subarray(c * rows, (c + 1) * rows);
    let mass = 0;
    let moment = 0;
    for (let r = reach - 6; r <= reach + 6; r++) {
      const rise = Math.max(0, sign * (section[r + 1]! - section[r - 1]!));
      mass += rise * rise;
      moment += rise * rise * (r - reach);
    }
    s[c] = path(t[c]!) + (mass > 0 ? moment / mass : 0);
    step[c] = stepAt(medianFiltered(section), reach, sign);
  }
  const inner = Array.from(t.keys()).filter((c) => t[c]! > 0.04 * wide.length_px && t[c]! < 0.96 * wide.length_px);
  const steps = inner.map((c) => step[c]!).sort((a, b) => a - b);
  const contrast = steps[steps.length >> 1] ?? 0;
  if (!(contrast > 0)) return null;
  const weight = Float64Array.from(step, (v) => (v > 0.4 * contrast ? Math.min(1, v / contrast) : 0));
  const line = fitSmoothLine(t, s, weight, { from: t[0]!, to: t[columns - 1]!, reach: 1.5, intervals: 12 });
  if (!line) return null;
  const seen = inner.filter((c) => weight[c]! > 0 && Math.abs(s[c]! - line.value(t[c]!)) < 2).length / inner.length;
  return { line, middle_px: line.value(wide.length_px / 2), seen, contrast };
}
