import { blurred } from '../crop/filters.ts';
import type { View } from './view.ts';

type Xy = readonly [number, number];
type Quad = readonly [Xy, Xy, Xy, Xy];

/** A straight edge: x cos a + y sin a = r. */
type Line = { readonly angle: number; readonly r: number; readonly votes: number };

const ANGLES = 180;
const LINES = 26;
/** A strong edge is worth no more than this: a weak one all along is as good as a strong one. */
const MOST_STEP = 24;
const LEAST_STEP = 7;
const PLACES = 32;
const QUADS = 10;
/** Opposite sides lie apart by at least this share of the picture. */
const LEAST_APART = 0.14;

/**
 * Quadrilaterals of four straight edges, the clearest first: finds a plate the colour of its ground.
 * Source of the search for lines: R. O. Duda & P. E. Hart, Comm. ACM 15 (1972) 11.
 */
export function quadsOfEdges(view: View): Quad[] {
  const { steps, directions } = edgesOf(view);
  const lines = strongestLines(view, steps, directions);
  const pairs = pairsAlike(lines, Math.min(view.width, view.height));
  const found: { quad: Quad; support: number }[] = [];
  pairs.forEach(([a, b], i) =>
    pairs.slice(i + 1).forEach(([c, d]) => {
      if (turnBetween(a, c) < Math.PI / 5) return;
      const quad = quadOf(a, b, c, d, view);
      if (quad) found.push({ quad, support: supportOf(quad, steps, view) });
    }),
  );
  const kept: Quad[] = [];
  for (const { quad } of found.sort((p, q) => q.support - p.support)) {
    if (kept.length >= QUADS) break;
    if (kept.every((other) => other.some((p) => quad.every((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) > 10))))
      kept.push(quad);
  }
  return kept;
}

function edgesOf({ width, height, colours }: View): { steps: Float32Array; directions: Float32Array } {
  const steps = new Float32Array(width * height);
  const directions = new Float32Array(width * height);
  for (const colour of colours) {
    const { values } = blurred({ width, height, values: colour }, 1.2);
    for (let y = 2; y < height - 2; y++)
      for (let x = 2, k = y * width + 2; x < width - 2; x++, k++) {
        const gx = values[k + 2]! - values[k - 2]!;
        const gy = values[k + 2 * width]! - values[k - 2 * width]!;
        const step = Math.hypot(gx, gy);
        if (step <= steps[k]!) continue;
        steps[k] = step;
        directions[k] = Math.atan2(gy, gx);
      }
  }
  return { steps, directions };
}

function strongestLines({ width, height }: View, steps: Float32Array, directions: Float32Array): Line[] {
  const most = Math.ceil(Math.hypot(width, height));
  const rows = 2 * most + 1;
  const table = new Float32Array(ANGLES * rows);
  for (let k = 0; k < steps.length; k++) {
    if (steps[k]! < LEAST_STEP) continue;
    const weight = Math.min(MOST_STEP, steps[k]!);
    const [x, y] = [k % width, (k / width) | 0];
    const middle = Math.round((directions[k]! / Math.PI) * ANGLES);
    for (let d = -3; d <= 3; d++) {
      const n = (middle + d + 2 * ANGLES) % ANGLES;
      const a = (n * Math.PI) / ANGLES;
      table[n * rows + Math.round(x * Math.cos(a) + y * Math.sin(a)) + most]! += weight;
    }
  }
  const lines: Line[] = [];
  while (lines.length < LINES) {
    let [best, at] = [0, 0];
    for (let i = 0; i < table.length; i++) if (table[i]! > best) [best, at] = [table[i]!, i];
    if (best === 0) break;
    const [n, r] = [Math.floor(at / rows), (at % rows) - most];
    lines.push({ angle: (n * Math.PI) / ANGLES, r, votes: best });
    for (let d = -4; d <= 4; d++) {
      const m = (n + d + ANGLES) % ANGLES;
      // beyond half a turn the same line has its distance the other way round
      const s = n + d < 0 || n + d >= ANGLES ? -r : r;
      for (let e = -6; e <= 6; e++) table[m * rows + Math.min(rows - 1, Math.max(0, s + e + most))] = 0;
    }
  }
  return lines;
}

function turnBetween(a: Line, b: Line): number {
  const d = Math.abs(a.angle - b.angle) % Math.PI;
  return Math.min(d, Math.PI - d);
}

function pairsAlike(lines: readonly Line[], size: number): [Line, Line][] {
  return lines.flatMap((a, i) =>
    lines.slice(i + 1).flatMap((b): [Line, Line][] => {
      if (turnBetween(a, b) > Math.PI / 7) return [];
      const flip = Math.cos(a.angle - b.angle) < 0 ? -1 : 1;
      return Math.abs(a.r - flip * b.r) > LEAST_APART * size ? [[a, b]] : [];
    }),
  );
}

function quadOf(a: Line, b: Line, c: Line, d: Line, { width, height }: View): Quad | null {
  const corners = [meeting(a, c), meeting(a, d), meeting(b, d), meeting(b, c)];
  const margin = 0.04 * Math.max(width, height);
  if (
    !corners.every(
      (p): p is Xy => p !== null && p[0] > -margin && p[1] > -margin && p[0] < width + margin && p[1] < height + margin,
    )
  )
    return null;
  const turn = (i: number) => {
    const [p, q, r] = [corners[i]!, corners[(i + 1) % 4]!, corners[(i + 2) % 4]!];
    return Math.sign((q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]));
  };
  if ([1, 2, 3].some((i) => turn(i) !== turn(0))) return null;
  return (turn(0) > 0 ? corners : corners.reverse()) as unknown as Quad;
}

function meeting(a: Line, b: Line): Xy | null {
  const det = Math.sin(b.angle - a.angle);
  if (Math.abs(det) < 0.2) return null;
  return [
    (a.r * Math.sin(b.angle) - b.r * Math.sin(a.angle)) / det,
    (b.r * Math.cos(a.angle) - a.r * Math.cos(b.angle)) / det,
  ];
}

/** Share of the sides' places with an edge, the weakest side counting as much as all together. */
function supportOf(quad: Quad, steps: Float32Array, { width, height }: View): number {
  const sides = quad.map((p, i) => {
    const q = quad[(i + 1) % 4]!;
    let sum = 0;
    for (let n = 0; n < PLACES; n++) {
      const t = (n + 0.5) / PLACES;
      const x = Math.round(p[0] + (q[0] - p[0]) * t);
      const y = Math.round(p[1] + (q[1] - p[1]) * t);
      if (x < 1 || y < 1 || x >= width - 1 || y >= height - 1) continue;
      const k = y * width + x;
      sum += Math.min(
        MOST_STEP,
        Math.max(steps[k]!, steps[k - 1]!, steps[k + 1]!, steps[k - width]!, steps[k + width]!),
      );
    }
    return sum / (PLACES * MOST_STEP);
  });
  return Math.min(...sides) + sides.reduce((a, b) => a + b, 0) / 4;
}
