import type { Marker } from './marker.ts';
import type { Sheet } from '../sheet.ts';

/** A place that looks like a marker, in sheet pixels. */
export type MarkerPlace = {
  readonly x: number;
  readonly y: number;
  /** correlation with the pattern, 0..1 */ readonly alike: number;
};

/** Every place in and on the frame that looks like the marker, the likest first. */
export function findMarkers(sheet: Sheet, ink: Float32Array, marker: Marker, atLeast: number): MarkerPlace[] {
  const { width, height, margin, frameWidth, frameHeight } = sheet;
  const { radius } = marker;
  const size = 2 * radius + 1;
  // noise is spread thin everywhere: only pixels about as dark as the marker's count
  const faint = FAINT * marker.ink.reduce((most, v) => Math.max(most, v || 0), 0);
  const counts = countsOf(ink, width, height, faint);
  const wanted = marker.ink.reduce((n, v) => n + (v > faint ? 1 : 0), 0);
  const edge = radius + 1;
  const left = Math.max(edge, margin - 3);
  const top = Math.max(edge, margin - 3);
  const right = Math.min(width - edge - 1, margin + frameWidth + 3);
  const bottom = Math.min(height - edge - 1, margin + frameHeight + 3);
  const found: MarkerPlace[] = [];
  for (let y = top; y <= bottom; y += 2)
    for (let x = left; x <= right; x += 2) {
      const n = boxCount(counts, width, x - radius, y - radius, size);
      if (n < 0.45 * wanted || n > 1.8 * wanted) continue;
      const alike = correlation(sheet, ink, marker, x, y);
      if (alike >= atLeast - NEARLY) found.push(climb(sheet, ink, marker, { x, y, alike }));
    }
  found.sort((a, b) => b.alike - a.alike);
  const kept: MarkerPlace[] = [];
  for (const f of found)
    if (f.alike >= atLeast && !kept.some((k) => Math.max(Math.abs(k.x - f.x), Math.abs(k.y - f.y)) < radius))
      kept.push(f);
  return kept.slice(0, MOST_PLACES).map((k) => settle(sheet, ink, marker, k));
}

const FAINT = 0.35;
/** Two pixels off, a thin ring correlates this much less. */
const NEARLY = 0.25;
/** A chart has fewer test points than this; chaining more would only take time. */
const MOST_PLACES = 120;

/** To the best place within two pixels. */
function climb(sheet: Sheet, ink: Float32Array, marker: Marker, from: MarkerPlace): MarkerPlace {
  let best = from;
  for (let dy = -1; dy <= 1; dy++)
    for (let dx = -1; dx <= 1; dx++) {
      const alike = correlation(sheet, ink, marker, from.x + dx, from.y + dy);
      if (alike > best.alike) best = { x: from.x + dx, y: from.y + dy, alike };
    }
  return best;
}

function correlation(
  { width }: Sheet,
  ink: Float32Array,
  { radius, ink: pattern }: Marker,
  x: number,
  y: number,
): number {
  const size = 2 * radius + 1;
  let n = 0,
    sa = 0,
    sb = 0,
    saa = 0,
    sbb = 0,
    sab = 0;
  for (let dy = -radius; dy <= radius; dy++) {
    const row = (y + dy) * width + x;
    const pat = (dy + radius) * size + radius;
    for (let dx = -radius; dx <= radius; dx++) {
      const a = ink[row + dx]!;
      const b = pattern[pat + dx]!;
      if (a !== a || b !== b) continue;
      n++;
      sa += a;
      sb += b;
      saa += a * a;
      sbb += b * b;
      sab += a * b;
    }
  }
  const va = saa - (sa * sa) / n;
  const vb = sbb - (sb * sb) / n;
  return n > 0.4 * size * size && va > 0 && vb > 0 ? (sab - (sa * sb) / n) / Math.sqrt(va * vb) : 0;
}

/** Between pixels: the top of a parabola through the correlations around. */
function settle(sheet: Sheet, ink: Float32Array, marker: Marker, at: MarkerPlace): MarkerPlace {
  const f = (dx: number, dy: number) => correlation(sheet, ink, marker, at.x + dx, at.y + dy);
  const shift = (a: number, b: number, c: number) => {
    const bottom = a - 2 * b + c;
    return bottom < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (a - c)) / bottom)) : 0;
  };
  // the pattern's own middle lies between pixels too
  const ox = marker.x - Math.round(marker.x);
  const oy = marker.y - Math.round(marker.y);
  return {
    x: at.x + shift(f(-1, 0), at.alike, f(1, 0)) + ox,
    y: at.y + shift(f(0, -1), at.alike, f(0, 1)) + oy,
    alike: at.alike,
  };
}

/** Running counts of pixels darker than `faint`, for the number in any box. */
function countsOf(ink: Float32Array, width: number, height: number, faint: number): Uint32Array {
  const out = new Uint32Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y++) {
    let row = 0;
    for (let x = 0; x < width; x++) {
      if (ink[y * width + x]! > faint) row++;
      out[(y + 1) * (width + 1) + x + 1] = out[y * (width + 1) + x + 1]! + row;
    }
  }
  return out;
}

const boxCount = (counts: Uint32Array, width: number, x: number, y: number, size: number): number => {
  const w = width + 1;
  return (
    counts[(y + size) * w + x + size]! - counts[y * w + x + size]! - counts[(y + size) * w + x]! + counts[y * w + x]!
  );
};
