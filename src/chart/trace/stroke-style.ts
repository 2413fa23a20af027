import type { StrokeStep } from './foresee.ts';
import { likeAt, type Likeness } from './likeness.ts';

/** How a curve is drawn along its way: solid, or in dashes and dots. Lengths in sheet pixels. */
export type StrokeStyle = {
  /** longest printed piece; Infinity for a solid line */
  readonly longestDash: number;
  /** longest gap between pieces; 0 for a solid line */
  readonly longestGap: number;
};

export const SOLID: StrokeStyle = { longestDash: Infinity, longestGap: 0 };

/** A dash is never longer than this; a longer piece is a line that was interrupted. */
const LONGEST_DASH_PX = 60;
const LONGEST_GAP_PX = 30;

/**
 * Tells dashes from a solid line by the pieces along a way that was followed.
 * Dashes come several times and with gaps about alike; a label or a worn place interrupts a solid line once or twice.
 */
export function styleAlong(like: Likeness, steps: readonly StrokeStep[]): StrokeStyle {
  const runs = runsAlong(like, steps);
  // the pieces at both ends are cut off by where the look ended
  const whole = runs.slice(1, -1);
  const gaps = whole.filter((r) => !r.inked).map((r) => r.length);
  const dashes = whole.filter((r) => r.inked).map((r) => r.length);
  if (gaps.length < 4 || dashes.length < 3) return SOLID;
  gaps.sort((a, b) => a - b);
  dashes.sort((a, b) => a - b);
  const usualGap = gaps[gaps.length >> 1]!;
  const longestGap = gaps[Math.floor(gaps.length * 0.85)]!;
  const longestDash = dashes[Math.floor(dashes.length * 0.9)]!;
  if (longestDash > LONGEST_DASH_PX || longestGap > LONGEST_GAP_PX || longestGap > 3 * usualGap + 3) return SOLID;
  const length = runs.reduce((s, r) => s + r.length, 0);
  const bare = gaps.reduce((s, g) => s + g, 0);
  return bare > 0.12 * length ? { longestDash, longestGap } : SOLID;
}

type Run = { inked: boolean; length: number };

function runsAlong(like: Likeness, steps: readonly StrokeStep[]): Run[] {
  const runs: Run[] = [];
  for (let k = 0; k + 1 < steps.length; k++) {
    const a = steps[k]!;
    const b = steps[k + 1]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const pieces = Math.max(1, Math.round(length));
    const nx = -(b.y - a.y) / length;
    const ny = (b.x - a.x) / length;
    for (let i = 0; i < pieces; i++) {
      const x = a.x + ((b.x - a.x) * i) / pieces;
      const y = a.y + ((b.y - a.y) * i) / pieces;
      let most = 0;
      for (let o = -2; o <= 2; o++) most = Math.max(most, likeAt(like, x + nx * o, y + ny * o));
      const last = runs.at(-1);
      // a little hysteresis: grain in the print makes no dashes
      const inked = most > (last?.inked ? 0.3 : 0.45);
      if (last && last.inked === inked) last.length += length / pieces;
      else runs.push({ inked, length: length / pieces });
    }
  }
  return withoutSpecks(runs);
}

/** Pieces and gaps of a pixel or so are grain. */
function withoutSpecks(runs: Run[]): Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    if (last && (run.length < 1.6 || last.inked === run.inked)) last.length += run.length;
    else out.push({ ...run });
  }
  return out;
}
