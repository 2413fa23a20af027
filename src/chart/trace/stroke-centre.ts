import { bridgeGaps } from './bridge.ts';
import { likeAt, type Likeness } from './likeness.ts';
import { fitSmoothLine } from './smooth-line.ts';

/** A traced curve: points of the stroke's middle in sheet pixels, from left to right, and how well each was seen. */
export type Trace = {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** 0 bridged .. 1 seen well */
  readonly seen: Float64Array;
};

type RoughStep = { readonly x: number; readonly y: number; readonly quality: number };

const SPACING = 2.5;

/**
 * The middle of a stroke along a roughly known way: a smooth base line through the steps, then the stroke's place
 * across it measured closely, smoothed without rounding off more than a couple of stroke widths.
 * @param width of the stroke at half depth
 * @returns null where the steps are too few
 */
export function centreOfStroke(like: Likeness, steps: readonly RoughStep[], width: number): Trace | null {
  const base = smoothPath(steps);
  if (!base) return null;
  const n = base.x.length;
  const length = (n - 1) * SPACING;
  const offset = new Float64Array(n);
  const weight = new Float64Array(n);
  const s = Float64Array.from({ length: n }, (_, i) => i * SPACING);
  const usual = usualDepth(like, base, width);
  for (let i = 0; i < n; i++) {
    const look = middleAcross(like, base, i, width);
    offset[i] = look.offset;
    const held = look.depth > 0.3 * usual && base.held[i]! > 0;
    weight[i] = held ? Math.min(1, look.depth / usual) * look.evenness : 0;
  }
  const fit = fitSmoothLine(s, offset, weight, {
    from: 0,
    to: length,
    intervals: Math.max(4, Math.min(70, Math.round(length / 22))),
    reach: 0.8,
  });
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const seen = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const shift = fit ? Math.max(-4, Math.min(4, fit.value(s[i]!))) : 0;
    x[i] = base.x[i]! - base.sin[i]! * shift;
    y[i] = base.y[i]! + base.cos[i]! * shift;
    seen[i] = fit && Math.abs(offset[i]! - shift) < 2 ? weight[i]! : 0;
  }
  bridgeGaps(
    x,
    y,
    Uint8Array.from(base.held, (h) => (h > 0 ? 0 : 1)),
  );
  return { x, y, seen };
}

/** `held` is 0 where the way was bridged: what lies there is no part of the stroke. */
type Base = { x: Float64Array; y: Float64Array; cos: Float64Array; sin: Float64Array; held: Float64Array };

/** A smooth way through the steps, as a function of the distance gone, in even spacing. */
function smoothPath(steps: readonly RoughStep[]): Base | null {
  if (steps.length < 4) return null;
  const gone = new Float64Array(steps.length);
  for (let i = 1; i < steps.length; i++)
    gone[i] = gone[i - 1]! + Math.hypot(steps[i]!.x - steps[i - 1]!.x, steps[i]!.y - steps[i - 1]!.y);
  const length = gone.at(-1)!;
  const weight = steps.map((p) => p.quality);
  const options = {
    from: 0,
    to: length,
    intervals: Math.max(3, Math.min(60, Math.round(length / 26))),
    stiffness: [1e-6, 1e-5, 1e-4, 1e-3],
    reach: 1.5,
  };
  const fx = fitSmoothLine(
    gone,
    steps.map((p) => p.x),
    weight,
    options,
  );
  const fy = fitSmoothLine(
    gone,
    steps.map((p) => p.y),
    weight,
    options,
  );
  if (!fx || !fy) return null;
  const n = Math.max(4, Math.round(length / SPACING) + 1);
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const cos = new Float64Array(n);
  const sin = new Float64Array(n);
  const held = new Float64Array(n);
  for (let i = 0, k = 0; i < n; i++) {
    const at = (i / (n - 1)) * length;
    while (k + 2 < gone.length && gone[k + 1]! < at) k++;
    held[i] = Math.max(steps[k]!.quality, steps[k + 1]!.quality);
    x[i] = fx.value(at);
    y[i] = fy.value(at);
    const dx = fx.slope(at);
    const dy = fy.slope(at);
    const l = Math.hypot(dx, dy) || 1;
    cos[i] = dx / l;
    sin[i] = dy / l;
  }
  return { x, y, cos, sin, held };
}

/** Where across the way the stroke's middle lies, how deep it is, and how alike its two sides are (0..1). */
function middleAcross(
  like: Likeness,
  base: Base,
  i: number,
  width: number,
): { offset: number; depth: number; evenness: number } {
  const c = base.cos[i]!;
  const s = base.sin[i]!;
  const n = Math.ceil(width + 4);
  const profile = new Float64Array(2 * n + 1);
  for (let o = -n; o <= n; o++) {
    let sum = 0;
    for (let t = -1.5; t <= 1.5; t += 1.5) sum += likeAt(like, base.x[i]! + c * t - s * o, base.y[i]! + s * t + c * o);
    profile[o + n] = sum / 3;
  }
  const search = Math.max(2, Math.round(width / 2 + 1));
  let top = n;
  let most = -Infinity;
  for (let o = -search; o <= search; o++) {
    const v = profile[o + n]! + 0.5 * (profile[o + n - 1]! + profile[o + n + 1]!) - 0.04 * Math.abs(o);
    if (v > most) {
      most = v;
      top = o + n;
    }
  }
  const half = Math.ceil(width / 2 + 0.8);
  const left = Math.min(profile[Math.max(0, top - half - 1)]!, profile[Math.max(0, top - half - 2)]!);
  const right = Math.min(profile[Math.min(2 * n, top + half + 1)]!, profile[Math.min(2 * n, top + half + 2)]!);
  const floor = Math.max(left, right);
  let mass = 0;
  let moment = 0;
  for (let o = -half; o <= half; o++) {
    const p = top + o;
    if (p < 0 || p > 2 * n) continue;
    const m = Math.max(0, profile[p]! - floor - 0.12);
    mass += m;
    moment += m * (p - n);
  }
  const depth = profile[top]! - floor;
  if (!(mass > 0)) return { offset: 0, depth: 0, evenness: 0 };
  return { offset: moment / mass, depth, evenness: 1 / (1 + 12 * Math.abs(left - right)) };
}

function usualDepth(like: Likeness, base: Base, width: number): number {
  const depths: number[] = [];
  for (let i = 0; i < base.x.length; i += 3) depths.push(middleAcross(like, base, i, width).depth);
  depths.sort((a, b) => a - b);
  return Math.max(0.1, depths[Math.floor(depths.length * 0.6)]!);
}
