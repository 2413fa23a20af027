/** One step of a stroke that was followed. */
export type StrokeStep = {
  readonly x: number;
  readonly y: number;
  /** direction of travel, radians, y down */
  readonly angle: number;
  /** how well a stroke was seen here, 0 (bridged) .. 1 */
  readonly quality: number;
  readonly parent: StrokeStep | null;
  readonly depth: number;
};

/** From one direction to another the short way round, −π..π. Source: definition. */
export function turn(from: number, to: number): number {
  const d = to - from;
  return d > Math.PI ? d - 2 * Math.PI : d < -Math.PI ? d + 2 * Math.PI : d;
}

const SHARPEST_BEND = 0.75;

/** How the stroke will go on for one step: a parabola through its last steps, the nearest counting most. */
export function foresee(from: StrokeStep, step: number, memory: number): { angle: number; chord: number } {
  const c = Math.cos(from.angle);
  const s = Math.sin(from.angle);
  let s0 = 1e-6,
    s1 = 0,
    s2 = 0,
    s3 = 0,
    s4 = 0,
    t0 = 0,
    t1 = 0,
    t2 = 0;
  let seen = 0;
  let length = 0;
  for (let g: StrokeStep | null = from; g && length > -3 * memory; g = g.parent) {
    const dx = g.x - from.x;
    const dy = g.y - from.y;
    const a = dx * c + dy * s;
    const n = -dx * s + dy * c;
    length = a;
    // beyond a good bend a parabola can't follow
    if (Math.abs(turn(g.angle, from.angle)) > SHARPEST_BEND) break;
    if (g.quality <= 0 && g.depth > 0) continue;
    const w = (0.15 + g.quality) * Math.exp(a / memory);
    seen++;
    s0 += w;
    s1 += w * a;
    s2 += w * a * a;
    s3 += w * a * a * a;
    s4 += w * a * a * a * a;
    t0 += w * n;
    t1 += w * a * n;
    t2 += w * a * a * n;
  }
  if (seen < 4) return { angle: from.angle, chord: from.angle };
  // a slight leaning towards no bend keeps few and noisy steps from curling up
  const prior = 0.0025 * s0 * memory ** 4 + 1e-9;
  const fit = solve3(s0, s1, s2, s3, s4 + prior, t0, t1, t2);
  if (!fit) return { angle: from.angle, chord: from.angle };
  const [a0, a1, a2] = fit;
  const bend = Math.max(-0.02, Math.min(0.02, a2));
  const at = (p: number) => a0 + a1 * p + bend * p * p;
  // when the last step was bridged, go on from where the guess stands
  const base = from.quality > 0 ? 0 : at(0);
  const chord = Math.atan2(at(step) - base, step);
  return { angle: from.angle + Math.atan(a1 + 2 * bend * step), chord: from.angle + chord };
}

function solve3(
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  t0: number,
  t1: number,
  t2: number,
): [number, number, number] | null {
  // [a b c; b c d; c d e] · x = t
  const m1 = c * e - d * d;
  const m2 = b * e - c * d;
  const m3 = b * d - c * c;
  const det = a * m1 - b * m2 + c * m3;
  if (!(Math.abs(det) > 1e-9 * Math.abs(a * m1))) return null;
  const x0 = (t0 * m1 - b * (t1 * e - d * t2) + c * (t1 * d - c * t2)) / det;
  const x1 = (a * (t1 * e - d * t2) - t0 * m2 + c * (b * t2 - t1 * c)) / det;
  const x2 = (a * (c * t2 - t1 * d) - b * (b * t2 - t1 * c) + t0 * m3) / det;
  return [x0, x1, x2];
}
