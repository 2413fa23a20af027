import { chainMarkers } from './marker-chain.ts';
import { findMarkers } from './find-markers.ts';
import { inkWithoutGrid, markerAt } from './marker.ts';
import { doubtBetween, smoothThrough, type Place } from './marker-spline.ts';
import type { GridInk } from '../grid/grid-ink.ts';
import type { Sheet } from '../sheet.ts';
import type { Trace } from './stroke-centre.ts';

/** A curve drawn as separate markers: where they are, and the smooth curve through them. */
export type MarkerTrace = {
  readonly trace: Trace;
  readonly markers: readonly (readonly [number, number])[];
  /** how far the curve may be off between them, root mean square */
  readonly doubt_px: number;
  readonly looseEnds: readonly { readonly x: number; readonly y: number }[];
};

/**
 * A smooth curve through the markers of the same look that follow on from the tapped one.
 * @returns null where no marker lies there, or fewer than four belong together
 */
export function traceMarkers(
  sheet: Sheet,
  grid: GridInk,
  x: number,
  y: number,
  reach: number,
  frameHalf: number,
): MarkerTrace | null {
  const ink = inkWithoutGrid(sheet, grid, frameHalf);
  const marker = markerAt(sheet, ink, x, y, reach);
  if (!marker) return null;
  const own = inkAround(sheet, marker.x, marker.y, marker.radius);
  const candidates = findMarkers(sheet, ink, marker, 0.5)
    // the same shape in another ink is another curve's marker
    .map((p) => ({
      ...p,
      alike: p.alike * (1 - 1.5 * Math.max(0, unlike(own, inkAround(sheet, p.x, p.y, marker.radius)) - 0.12)),
    }))
    .sort((a, b) => b.alike - a.alike);
  // the tapped marker matches itself too well to measure by; the next ones show what a match is here
  const usual = candidates[Math.min(3, candidates.length - 1)]?.alike ?? 1;
  const places = candidates.filter((p) => p.alike > 0.72 * usual);
  let start = -1;
  places.forEach((p, i) => {
    const d = Math.hypot(p.x - marker.x, p.y - marker.y);
    if (d < 6 && (start < 0 || d < Math.hypot(places[start]!.x - marker.x, places[start]!.y - marker.y))) start = i;
  });
  if (start < 0) return null;
  const indices = chainMarkers(places, start, sheet.frameWidth);
  const chain = indices.map((i) => places[i]!);
  if (chain.length < 4) return null;

  const markers = chain.map((p): Place => [p.x, p.y]);
  const curve = smoothThrough(markers);
  return {
    trace: {
      x: Float64Array.from(curve, ([px]) => px),
      y: Float64Array.from(curve, ([, py]) => py),
      seen: new Float64Array(curve.length).fill(0.7),
    },
    markers,
    doubt_px: doubtBetween(markers),
    // markers just like these ones beyond an end: the curve may be longer
    looseEnds: [chain[0]!, chain.at(-1)!].filter((end, k) =>
      places.some(
        (p, i) =>
          !indices.includes(i) &&
          (k ? p.x > end.x : p.x < end.x) &&
          Math.hypot(p.x - end.x, p.y - end.y) < 0.3 * sheet.frameWidth,
      ),
    ),
  };
}

/** Mean ink of the inked pixels around a place, by channel. */
function inkAround(
  { width, height, ink, darkness }: Sheet,
  x: number,
  y: number,
  radius: number,
): readonly [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0];
  let n = 1e-6;
  for (let py = Math.max(0, Math.round(y) - radius); py <= Math.min(height - 1, Math.round(y) + radius); py++)
    for (let px = Math.max(0, Math.round(x) - radius); px <= Math.min(width - 1, Math.round(x) + radius); px++) {
      const i = py * width + px;
      const w = Math.max(0, darkness[i]! - 15);
      for (let c = 0; c < 3; c++) sum[c]! += w * ink[3 * i + c]!;
      n += w;
    }
  return [sum[0] / n, sum[1] / n, sum[2] / n];
}

/** How differently two inks are coloured, whatever their strength: 0 alike .. 1. */
function unlike(a: readonly [number, number, number], b: readonly [number, number, number]): number {
  const la = Math.hypot(...a) || 1;
  const lb = Math.hypot(...b) || 1;
  return Math.hypot(a[0] / la - b[0] / lb, a[1] / la - b[1] / lb, a[2] / la - b[2] / lb);
}
