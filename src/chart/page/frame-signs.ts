import { homographyOf, type Homography } from '../../picture/homography.ts';
import type { GlyphBlob } from './glyph-blobs.ts';
import { slopeAt } from '../../picture/lines/page-lines.ts';
import type { Chain } from '../../picture/lines/ridge-chains.ts';
import { areaOf, sideHold, sidesOf, type WebFrame } from './web-frames.ts';

/** What tells a plot frame from a table, a text box or the border of a plate. */
export type FrameSigns = {
  /** 0..1, how well the sides hold */
  readonly hold: number;
  /** 0..1, how well the weakest side holds */
  readonly weakest: number;
  /** length of strokes running neither along nor across the frame, in widths of the frame, up to 2 */
  readonly curves: number;
  /** share of the inside, in tenths by tenths, that has letters */
  readonly text: number;
  /** 0..1, rows of labels along two adjacent sides, the weaker of them */
  readonly labels: number;
  /** 0..1, rows of labels along the better labelled side */
  readonly label: number;
  /** square root of its share of the photo */
  readonly size: number;
  /** share of the frame's smaller dimension between it and the photo's edge, up to 0.1 */
  readonly margin: number;
};

/** A short piece of a stroke: its middle, its slope in the direction it was followed in, its length; view pixels. */
export type StrokeStep = {
  readonly upright: boolean;
  readonly x: number;
  readonly y: number;
  readonly slope: number;
  readonly length: number;
};

const STEP = 10;
/** Steeper than this a stroke is followed in the other direction. */
const STEEPEST = 1.02;

/** The strokes of one direction cut into short pieces. */
export function strokeSteps(chains: readonly Chain[], upright: boolean): StrokeStep[] {
  const steps: StrokeStep[] = [];
  for (const { y: along, x: across } of chains)
    for (let i = STEP; i < along.length; i += STEP) {
      const run = along[i]! - along[i - STEP]!;
      const slope = (across[i]! - across[i - STEP]!) / run;
      if (run > 1.6 * STEP || Math.abs(slope) > STEEPEST) continue;
      const [x, y] = upright ? [across[i]!, along[i]!] : [along[i]!, across[i]!];
      steps.push({ upright, x, y, slope, length: Math.hypot(run, run * slope) });
    }
  return steps;
}

/**
 * Measures what tells a plot frame from other boxes.
 * @param steps of all strokes, dark and light
 * @param blobs letters of the frame's own polarity
 * @param width,height of the view
 * @returns null where the corners lie on one line
 */
export function frameSigns(
  frame: WebFrame,
  steps: readonly StrokeStep[],
  blobs: readonly GlyphBlob[],
  width: number,
  height: number,
): FrameSigns | null {
  const [bl, br, tr, tl] = frame.corners;
  const map = homographyOf(frame.corners, [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ]);
  if (!map) return null;
  const wide = (Math.hypot(br[0] - bl[0], br[1] - bl[1]) + Math.hypot(tr[0] - tl[0], tr[1] - tl[1])) / 2;
  const high = (Math.hypot(tl[0] - bl[0], tl[1] - bl[1]) + Math.hypot(tr[0] - br[0], tr[1] - br[1])) / 2;
  const rows = labelRows(blobs, map, wide, high);
  const xs = frame.corners.map((c) => c[0]);
  const ys = frame.corners.map((c) => c[1]);
  const margin = Math.min(Math.min(...xs), Math.min(...ys), width - 1 - Math.max(...xs), height - 1 - Math.max(...ys));
  return {
    hold: frame.hold,
    weakest: Math.min(...sidesOf(frame).map(sideHold)),
    curves: Math.min(2, curveLength(frame, steps, map) / wide),
    text: textShare(blobs, map),
    labels: Math.max(...rows.map((r, k) => Math.min(r, rows[(k + 1) % 4]!))),
    label: Math.max(...rows),
    size: Math.sqrt(areaOf(frame.corners) / (width * height)),
    margin: Math.max(-0.05, Math.min(0.1, margin / Math.min(wide, high))),
  };
}

const at = (h: Homography, x: number, y: number): [number, number] => {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return [(h[0]! * x + h[1]! * y + h[2]!) / w, (h[3]! * x + h[4]! * y + h[5]!) / w];
};

const LEAST_TURN = 0.1;

/** Length of what runs askew inside the frame, view pixels. */
function curveLength({ corners, left, right, top, bottom }: WebFrame, steps: readonly StrokeStep[], map: Homography) {
  const xs = corners.map((c) => c[0]);
  const ys = corners.map((c) => c[1]);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  let length = 0;
  for (const s of steps) {
    if (s.x < x0 || s.x > x1 || s.y < y0 || s.y > y1) continue;
    const along = s.upright ? s.y : s.x;
    const a = slopeAt((s.upright ? left : top).line, along);
    const b = slopeAt((s.upright ? right : bottom).line, along);
    if (s.slope > Math.min(a, b) - LEAST_TURN && s.slope < Math.max(a, b) + LEAST_TURN) continue;
    const [u, v] = at(map, s.x, s.y);
    if (u > 0.015 && u < 0.985 && v > 0.015 && v < 0.985) length += s.length;
  }
  return length;
}

const CELLS = 10;

function textShare(blobs: readonly GlyphBlob[], map: Homography): number {
  const cells = new Uint8Array(CELLS * CELLS);
  for (const { x, y } of blobs) {
    const [u, v] = at(map, x, y);
    if (u > 0.01 && u < 0.99 && v > 0.01 && v < 0.99) cells[Math.floor(u * CELLS) * CELLS + Math.floor(v * CELLS)] = 1;
  }
  return cells.reduce((s, c) => s + c, 0) / cells.length;
}

/** How far out labels may stand, in shares of the frame, and how far along it they are told apart. */
const DEEPEST = 0.2;
const BINS = 36;
const ENOUGH_LABELS = 3;

/** For bottom, right, top, left: how much the letters nearest outside look like a row of tick labels, 0..1. */
function labelRows(blobs: readonly GlyphBlob[], map: Homography, wide: number, high: number): number[] {
  const near: { along: number; out: number; size: number }[][] = [[], [], [], []];
  for (const { x, y, size } of blobs) {
    const [u, v] = at(map, x, y);
    if (u < -DEEPEST || u > 1 + DEEPEST || v < -DEEPEST || v > 1 + DEEPEST) continue;
    if (u > -0.03 && u < 1.03) {
      if (v < 0) near[0]!.push({ along: u, out: -v * high, size });
      if (v > 1) near[2]!.push({ along: u, out: (v - 1) * high, size });
    }
    if (v > -0.03 && v < 1.03) {
      if (u > 1) near[1]!.push({ along: v, out: (u - 1) * wide, size });
      if (u < 0) near[3]!.push({ along: v, out: -u * wide, size });
    }
  }
  return near.map((side, k) => {
    if (side.length < 4) return 0;
    side.sort((a, b) => a.out - b.out);
    const size = side
      .slice(0, 12)
      .map((b) => b.size)
      .sort((a, b) => a - b)[Math.min(side.length, 12) >> 1]!;
    // labels beside an upright side stand one behind the other, digit by digit
    const reach = side[1]!.out + (k % 2 ? 4 : 1.4) * size;
    const bins = new Uint8Array(BINS + 2);
    for (const b of side) {
      if (b.out > reach || b.size > 2.5 * size) continue;
      const half = (0.75 * b.size) / (k % 2 ? high : wide);
      const from = Math.floor((b.along - half + 0.03) * (BINS / 1.06));
      const to = Math.floor((b.along + half + 0.03) * (BINS / 1.06));
      for (let i = Math.max(0, from); i <= Math.min(BINS - 1, to); i++) bins[i + 1] = 1;
    }
    let groups = 0;
    for (let i = 1; i <= BINS; i++) if (bins[i] && !bins[i - 1]) groups++;
    return Math.min(1, groups / ENOUGH_LABELS);
  });
}
