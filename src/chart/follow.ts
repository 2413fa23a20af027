import { hiddenAt, likeAt, type Likeness } from './likeness.ts';

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

/** Where following must stop: the inside of the plot frame, in sheet pixels. */
export type Bounds = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };

export type FollowOptions = {
  readonly bounds: Bounds;
  /** width of the stroke at half depth */
  readonly width: number;
  /** what a stroke of this curve gives where it is seen well, 0..1 */
  readonly usual: number;
  /** longest stretch without any stroke that may be bridged, sheet pixels */
  readonly longestGap: number;
  /** penalty (0 or more, per pixel) for going where another curve was already found */
  readonly taken?: (x: number, y: number) => number;
};

const STEP = 5;
const BEAM = 14;
const SEEN_WORTH = 0.35;
const MEMORY_PX = 24;
const LONG_MEMORY_PX = 60;

type Guess = StrokeStep & {
  readonly score: number;
  readonly gap: number;
  /** what the stroke has been giving lately: print fades, and glare and worn plates fade it more */
  readonly level: number;
  readonly best: StrokeStep;
  readonly bestScore: number;
  readonly parent: Guess | null;
};

/**
 * Follows a stroke from a point in one direction, as several guesses side by side (a beam): each guess knows how the
 * stroke has been bending, looks across its way for the stroke a step ahead, and goes on for a while without it.
 * Seen stroke earns, gaps and sharp turns cost; the guess that earned most wins, cut back to where it last saw ink.
 * @param forward 1 to the right, −1 to the left
 * @returns steps from the start outwards, and the best other way that would have earned nearly as much
 * Source: multiple-hypothesis tracking (D. B. Reid, IEEE Trans. Automatic Control 24 (1979) 843–854), one target.
 */
export function followStroke(
  like: Likeness,
  start: { x: number; y: number; angle: number },
  forward: 1 | -1,
  options: FollowOptions,
): Followed {
  const angle = forward === 1 ? start.angle : start.angle + Math.PI;
  const seed = { x: start.x, y: start.y, angle, quality: 1, parent: null, depth: 0 } as StrokeStep;
  let beam: Guess[] = [{ ...seed, parent: null, score: 0, gap: 0, level: options.usual, best: seed, bestScore: 0 }];
  let winner = beam[0]!;
  const given: Guess[] = [];
  for (let k = 0; k < 900 && beam.length; k++) {
    const next: Guess[] = [];
    for (const guess of beam)
      for (const g of expand(like, guess, forward, options)) {
        if (g.bestScore > winner.bestScore) winner = g;
        if (g.gap <= options.longestGap && inside(g, options.bounds) && g.score > g.bestScore - MOST_DEBT) next.push(g);
      }
    beam = thin(next, given);
    // a beam far behind the winner can't catch up any more
    if (beam.length && beam[0]!.score < winner.bestScore - MOST_DEBT) break;
  }
  const steps = stepsTo(winner.best);
  return { steps, doubt: otherWay(steps, winner, [...given, ...beam]) };
}

export type Followed = {
  readonly steps: StrokeStep[];
  readonly doubt: { readonly x: number; readonly y: number } | null;
};

function stepsTo(end: StrokeStep): StrokeStep[] {
  const steps: StrokeStep[] = [];
  for (let s: StrokeStep | null = end; s; s = s.parent) steps.push(s);
  return steps.reverse();
}

/** Where another guess left the winner's way for good and still earned nearly as much, if any did. */
function otherWay(steps: StrokeStep[], winner: Guess, others: Guess[]): { x: number; y: number } | null {
  const nearly = others
    .filter((g) => g.bestScore > winner.bestScore - NEARLY && g.bestScore > 0)
    .sort((a, b) => b.bestScore - a.bestScore);
  for (const g of nearly.slice(0, 12)) {
    const way = stepsTo(g.best);
    let apart: StrokeStep | null = null;
    let farthest = 0;
    let k = 0;
    for (const s of way) {
      while (
        k + 1 < steps.length &&
        Math.hypot(steps[k + 1]!.x - s.x, steps[k + 1]!.y - s.y) <= Math.hypot(steps[k]!.x - s.x, steps[k]!.y - s.y)
      )
        k++;
      const d = Math.hypot(steps[k]!.x - s.x, steps[k]!.y - s.y);
      if (d > 7 && !apart) apart = s;
      if (d < 4) apart = null;
      farthest = apart ? Math.max(farthest, d) : 0;
    }
    if (apart && farthest > 10) return { x: apart.x, y: apart.y };
  }
  return null;
}

const NEARLY = 12;

const MOST_DEBT = 140;

const inside = ({ x, y }: StrokeStep, b: Bounds) => x >= b.left && x <= b.right && y >= b.top && y <= b.bottom;

/** Best guesses first, one for each place and direction. */
function thin(guesses: Guess[], given: Guess[]): Guess[] {
  guesses.sort((a, b) => b.score - a.score);
  const kept: Guess[] = [];
  for (const g of guesses) {
    if (kept.length >= BEAM) {
      given.push(g);
      continue;
    }
    const same = kept.some(
      (k) =>
        Math.abs(k.x - g.x) + Math.abs(k.y - g.y) < 2.2 &&
        Math.abs(turn(k.angle, g.angle)) < 0.09 &&
        Math.abs(k.gap - g.gap) < 12,
    );
    if (!same) kept.push(g);
  }
  return kept;
}

const turn = (a: number, b: number): number => {
  const d = b - a;
  return d > Math.PI ? d - 2 * Math.PI : d < -Math.PI ? d + 2 * Math.PI : d;
};

function* expand(like: Likeness, from: Guess, forward: 1 | -1, options: FollowOptions): Generator<Guess> {
  const ahead = predict(from, from.gap > 8 ? LONG_MEMORY_PX : MEMORY_PX);
  // flow never runs back: keep to the half plane ahead
  const limit = Math.PI / 2 + 0.03;
  const middle = forward === 1 ? 0 : Math.PI;
  const lean = turn(middle, ahead.angle);
  if (Math.abs(lean) > limit + 0.25) return;
  const angle = Math.abs(lean) > limit ? middle + Math.sign(lean) * limit : ahead.angle;
  const x = from.x + STEP * Math.cos(ahead.chord);
  const y = from.y + STEP * Math.sin(ahead.chord);
  const reach = Math.min(22, 5 + options.width / 2 + 0.22 * from.gap);
  const look = lookAcross(like, x, y, angle, reach, options.width, from.level);
  const spread = 1.3 + 0.13 * from.gap;
  for (const peak of look.peaks) {
    const off = Math.abs(peak.offset) / spread;
    const px = x - Math.sin(angle) * peak.offset;
    const py = y + Math.cos(angle) * peak.offset;
    const cost = 0.9 * (off < 3 ? off * off : 6 * off - 9) + STEP * (options.taken?.(px, py) ?? 0);
    const score = from.score + STEP * (peak.quality - SEEN_WORTH) - cost;
    const heading = from.gap > 8 ? angle : Math.atan2(py - from.y, px - from.x);
    const step: StrokeStep = {
      x: px,
      y: py,
      angle: angle + clampTurn(turn(angle, heading)),
      quality: peak.quality,
      parent: from,
      depth: from.depth + 1,
    };
    yield finish(
      step,
      from,
      score,
      0,
      Math.min(1.15 * options.usual, Math.max(0.35 * options.usual, from.level + 0.12 * (peak.ridge - from.level))),
    );
  }
  const perPixel = look.hidden > 0.5 ? 0.08 : look.inked > 0.12 ? 0.4 : from.gap < 18 ? 0.6 : 1.4;
  const score = from.score - STEP * (perPixel + (options.taken?.(x, y) ?? 0));
  yield finish(
    { x, y, angle, quality: 0, parent: from, depth: from.depth + 1 },
    from,
    score,
    from.gap + STEP,
    from.level,
  );
}

const clampTurn = (d: number) => Math.max(-0.5, Math.min(0.5, d));

function finish(step: StrokeStep, from: Guess, score: number, gap: number, level: number): Guess {
  const better = gap === 0 && score > from.bestScore;
  const guess = { ...step, parent: from, score, gap, level, best: from.best, bestScore: from.bestScore } as {
    -readonly [K in keyof Guess]: Guess[K];
  };
  if (better) {
    guess.best = guess;
    guess.bestScore = score;
  }
  return guess;
}

/** How the stroke will go on: a parabola through its last steps, the nearest counting most. */
function predict(from: Guess, memory: number): { angle: number; chord: number } {
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
  // a prior of no bend, worth a few steps' evidence over the memory's length
  const prior = 2.5 * s0 * memory ** 4 * 0.02 + 1e-9;
  const fit = solve3(s0, s1, s2, s3, s4 + prior, t0, t1, t2);
  if (!fit) return { angle: from.angle, chord: from.angle };
  const [a0, a1, a2] = fit;
  const bend = Math.max(-0.02, Math.min(0.02, a2));
  const at = (p: number) => a0 + a1 * p + bend * p * p;
  // when the last step was bridged, go on from where the guess stands
  const base = from.quality > 0 ? 0 : at(0);
  const chord = Math.atan2(at(STEP) - base, STEP);
  return { angle: from.angle + Math.atan(a1 + 2 * bend * STEP), chord: from.angle + chord };
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

type Peak = { offset: number; quality: number; ridge: number };
type Look = { peaks: Peak[]; inked: number; hidden: number };

/** Cross-section of the sheet at a place, averaged a little along the way: where strokes are, and what else is there. */
function lookAcross(
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
  const profile = new Float32Array(2 * n + 1);
  for (let o = -n; o <= n; o++) {
    let sum = 0;
    for (let t = -3; t <= 3; t += 1.5) sum += likeAt(like, x + c * t - s * o, y + s * t + c * o);
    profile[o + n] = sum / 5;
  }
  const at = (o: number) => {
    const p = o + n;
    const i = Math.max(0, Math.min(2 * n - 1, Math.floor(p)));
    return profile[i]! + (profile[i + 1]! - profile[i]!) * (p - i);
  };
  const core = Math.min(1, half * 0.6);
  const ridge = (o: number) => {
    const middle = (at(o - core) + 2 * at(o) + at(o + core)) / 4;
    return middle - 0.5 * (at(o - side) + at(o + side)) - 0.15 * Math.abs(at(o - side) - at(o + side));
  };
  const peaks: Peak[] = [];
  const whole = Math.floor(reach);
  let inked = 0;
  for (let o = -whole; o <= whole; o++) {
    inked = Math.max(inked, Math.abs(o) < 7 ? at(o) : 0);
    const v = ridge(o);
    if (v < 0.3 * usual || v < ridge(o - 1) || v <= ridge(o + 1)) continue;
    const a = ridge(o - 1);
    const b = ridge(o + 1);
    const bottom = a - 2 * v + b;
    const shift = bottom < 0 ? (0.5 * (a - b)) / bottom : 0;
    peaks.push({ offset: o + Math.max(-0.5, Math.min(0.5, shift)), quality: Math.min(1, v / usual), ridge: v });
  }
  let hidden = 0;
  for (let t = -4; t <= 4; t += 2) if (hiddenAt(like, x + c * t, y + s * t)) hidden += 0.2;
  return { peaks, inked, hidden };
}
