import { NONE_FREE, type FreeEnds } from './lattice.ts';
import type { Sheet } from '../sheet.ts';

/** A grid line (or a row of ticks' place) as it runs in the sheet: where it was seen, strip by strip. */
export type GridLine = {
  /** middle of each strip along the line, and the line's place across, in sheet pixels */
  readonly along: readonly number[];
  readonly across: readonly number[];
  /** mean place across */
  readonly place: number;
  /** mean ink of the line above what lies beside it, 0..255 */
  readonly strength: number;
  /** share of the frame it was seen over, 0..1 */
  readonly seen: number;
};

export type LineDirection = 'upright' | 'level';

const STRIPS = 16;

/**
 * Lines that run along the sheet from end to end, or most of it: `upright` ones mark flows, `level` ones pressures.
 * The frame's own sides are left out.
 * @param ink the sheet's darkness, or its lightness for a white grid
 * @param free sides that were not found in the photo
 */
export function findGridLines(
  sheet: Sheet,
  direction: LineDirection,
  ink: Uint8Array = sheet.darkness,
  free: FreeEnds = NONE_FREE,
): GridLine[] {
  const { frameWidth, frameHeight, margin } = sheet;
  const [first, last] = searched(sheet, direction, free);
  const length = direction === 'upright' ? frameHeight : frameWidth;
  const tall = length / STRIPS;
  type Chain = { along: number[]; across: number[]; ink: number[]; last: number };
  const chains: Chain[] = [];
  for (let k = 0; k < STRIPS; k++) {
    const from = Math.round(margin + k * tall + (k === 0 ? 3 : 0));
    const to = Math.round(margin + (k + 1) * tall - (k === STRIPS - 1 ? 3 : 0));
    const profile = ridgeProfile(sheet, direction, from, to, ink);
    const peaks = peaksOf(profile, first, last);
    const open = chains.filter((c) => k - c.last <= 4);
    const pairs = peaks
      .flatMap((p, i) => open.map((c, j) => ({ i, j, gap: Math.abs(p.at - c.across.at(-1)!) })))
      .filter((p) => p.gap < 3)
      .sort((a, b) => a.gap - b.gap);
    const taken = new Set<number>();
    const joined = new Set<number>();
    for (const { i, j } of pairs) {
      if (taken.has(i) || joined.has(j)) continue;
      taken.add(i);
      joined.add(j);
      extend(open[j]!, (from + to) / 2, peaks[i]!, k);
    }
    peaks.forEach((p, i) => {
      if (taken.has(i)) return;
      const chain: Chain = { along: [], across: [], ink: [], last: k };
      extend(chain, (from + to) / 2, p, k);
      chains.push(chain);
    });
  }
  return chains
    .filter((c) => c.along.length >= 0.45 * STRIPS)
    .map((c) => ({
      along: c.along,
      across: c.across,
      place: c.across.reduce((s, v) => s + v, 0) / c.across.length,
      strength: c.ink.reduce((s, v) => s + v, 0) / c.ink.length,
      seen: c.along.length / STRIPS,
    }))
    .sort((a, b) => a.place - b.place);

  function extend(chain: Chain, along: number, peak: Peak, strip: number): void {
    chain.along.push(along);
    chain.across.push(peak.at);
    chain.ink.push(peak.ink);
    chain.last = strip;
  }
}

/** Places across between which lines are looked for: clear of the frame's lines, and past a side that was not found. */
export function searched(sheet: Sheet, direction: LineDirection, free: FreeEnds): readonly [number, number] {
  const { frameWidth, frameHeight, margin } = sheet;
  const span = direction === 'upright' ? frameWidth : frameHeight;
  // fractions grow upwards, places downwards
  const [start, end] = direction === 'upright' ? [free.low, free.high] : [free.high, free.low];
  return [margin + (start ? 6 - margin : 4), margin + span + (end ? margin - 6 : -4)];
}

/**
 * Mean over a strip of how much more ink each place has than both its sides. Each pixel counts for little more than a
 * grid line gives, so that a curve or a letter crossing the strip leaves no peak.
 * @param from,to the strip, along the lines
 */
export function ridgeProfile(
  sheet: Sheet,
  direction: LineDirection,
  from: number,
  to: number,
  ink: Uint8Array = sheet.darkness,
): Float32Array {
  const { width, height } = sheet;
  const upright = direction === 'upright';
  const size = upright ? width : height;
  const profile = new Float32Array(size);
  // both ways run along the rows, as the picture lies in memory
  const step = upright ? 1 : width;
  const [y0, y1] = upright ? [from, to] : [5, height - 5];
  const [x0, x1] = upright ? [5, width - 5] : [from, to];
  for (let y = y0; y < y1; y++)
    for (let x = x0, i = y * width + x0; x < x1; x++, i++) {
      const here = ink[i]!;
      const beside = Math.max(ink[i - step]!, ink[i + step]!);
      const middle = here + beside;
      if (middle < 6) continue;
      const before = ink[i - 3 * step]! + ink[i - 4 * step]!;
      const after = ink[i + 3 * step]! + ink[i + 4 * step]!;
      const ridge = (middle - (before > after ? before : after)) * 0.5;
      if (ridge > 0) profile[upright ? x : y]! += ridge > RIDGE_CAP ? RIDGE_CAP : ridge;
    }
  for (let p = 0; p < size; p++) profile[p]! /= Math.max(1, to - from);
  return profile;
}

const RIDGE_CAP = 60;

export type Peak = { at: number; ink: number };

/** Local tops of a profile that stand clear of its ordinary level, placed between pixels. */
export function peaksOf(profile: Float32Array, from: number, to: number): Peak[] {
  const sorted = Array.from(profile.subarray(Math.max(0, Math.floor(from)), Math.ceil(to))).sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1] ?? 0;
  const spread = middle - (sorted[Math.floor(sorted.length * 0.16)] ?? 0);
  const threshold = middle + Math.max(1.2, 3.5 * spread);
  const peaks: Peak[] = [];
  for (let p = Math.max(2, Math.ceil(from)); p <= Math.min(profile.length - 3, to); p++) {
    const v = profile[p]!;
    if (v < threshold || v < profile[p - 1]! || v <= profile[p + 1]! || v < profile[p - 2]! || v <= profile[p + 2]!)
      continue;
    // centre of the top's own mass: steadier than a parabola on a line two pixels wide
    let mass = 0;
    let moment = 0;
    for (let d = -2; d <= 2; d++) {
      const m = Math.max(0, profile[p + d]! - middle - 0.3 * (v - middle));
      mass += m;
      moment += m * d;
    }
    peaks.push({ at: p + moment / mass, ink: v - middle });
  }
  return peaks;
}
