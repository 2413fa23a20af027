import { hiddenAt, likeAt, type Likeness } from './likeness.ts';

/** A stroke crossed by a section: its place, how much of a stroke it is (0..1), and its height above both sides. */
export type Peak = { offset: number; quality: number; ridge: number };
/** What a section crosses: strokes, any ink near its middle, how much of its middle the
 * grid hides, and whether its middle lies in a blot wider than the stroke (a filled marker). */
export type Look = { peaks: Peak[]; inked: number; hidden: number; blotted: boolean };

const LONGEST = 80;
/** One section's values, used again by the next. */
const scratch = new Float32Array(2 * LONGEST + 1);

/**
 * Cross-section of the sheet at a place, averaged a little along the way: where strokes are, and what else is there.
 * @param angle which way the stroke is thought to run; offsets of peaks are to the right of it as the sheet is seen
 * @param reach how far to both sides; @param width of the stroke; @param usual height of a stroke of this curve here
 */
export function lookAcross(
  like: Likeness,
  x: number,
  y: number,
  angle: number,
  reach: number,
  width: number,
  usual: number,
): Look {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const half = width / 2;
  const side = Math.max(2, half + 1.8);
  const n = Math.ceil(reach + side + 1);
  const profile = n <= LONGEST ? scratch : new Float32Array(2 * n + 1);
  for (let o = -n; o <= n; o++) {
    let sum = 0;
    for (let t = -3; t <= 3; t += 1.5) sum += likeAt(like, x + c * t - s * o, y + s * t + c * o);
    profile[o + n] = sum / 5;
  }
  const core = Math.min(1, half * 0.6);
  const peaks: Peak[] = [];
  const whole = Math.floor(reach);
  let inked = 0;
  for (let o = -whole; o <= whole; o++) {
    inked = Math.max(inked, Math.abs(o) < 7 ? profile[o + n]! : 0);
    const v = ridgeAt(profile, n, o, core, side);
    if (v < 0.3 * usual) continue;
    const a = ridgeAt(profile, n, o - 1, core, side);
    if (v < a) continue;
    const b = ridgeAt(profile, n, o + 1, core, side);
    if (v <= b) continue;
    const bottom = a - 2 * v + b;
    const shift = bottom < 0 ? (0.5 * (a - b)) / bottom : 0;
    peaks.push({ offset: o + Math.max(-0.5, Math.min(0.5, shift)), quality: Math.min(1, v / usual), ridge: v });
  }
  let hidden = 0;
  for (let t = -4; t <= 4; t += 2) if (hiddenAt(like, x + c * t, y + s * t)) hidden += 0.2;
  const blotted = Math.min(between(profile, n, -side), profile[n]!, between(profile, n, side)) > 0.7 * usual;
  return { peaks, inked, hidden, blotted };
}

/** A section's value at an offset from its middle, straight between pixels. @param n pixels on both sides of it */
function between(profile: Float32Array, n: number, offset: number): number {
  const p = offset + n;
  const i = Math.max(0, Math.min(2 * n - 1, Math.floor(p)));
  return profile[i]! + (profile[i + 1]! - profile[i]!) * (p - i);
}

/** How far a section stands up at an offset above both sides of a stroke there; uneven sides count against it. */
function ridgeAt(profile: Float32Array, n: number, o: number, core: number, side: number): number {
  const middle = (between(profile, n, o - core) + 2 * between(profile, n, o) + between(profile, n, o + core)) / 4;
  const [left, right] = [between(profile, n, o - side), between(profile, n, o + side)];
  return middle - 0.5 * (left + right) - 0.15 * Math.abs(left - right);
}
