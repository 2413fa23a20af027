import { lookAcross } from './cross-section.ts';
import { foresee, turn, type StrokeStep } from './foresee.ts';
import type { Likeness } from './likeness.ts';

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

/** All ways on from a guess: along each stroke seen a step ahead, and without any. */
function* expand(like: Likeness, from: Guess, forward: 1 | -1, options: FollowOptions): Generator<Guess> {
  // without a stroke in sight both the last bend and the longer course may be how it goes on
  const memories = from.gap > 0 ? [MEMORY_PX, LONG_MEMORY_PX] : [MEMORY_PX];
  let before: number | null = null;
  for (const memory of memories) {
    const ahead = foresee(from, STEP, memory);
    if (before !== null && Math.abs(turn(before, ahead.angle)) < 0.05) continue;
    before = ahead.angle;
    yield* onward(like, from, ahead, forward, options);
  }
}

/** Flow never runs back; a stroke may lean over by this much where it is drawn by hand or the page is bent. */
const OVERHANG = 0.03;

function* onward(
  like: Likeness,
  from: Guess,
  ahead: { angle: number; chord: number },
  forward: 1 | -1,
  options: FollowOptions,
): Generator<Guess> {
  const limit = Math.PI / 2 + OVERHANG;
  const middle = forward === 1 ? 0 : Math.PI;
  const lean = turn(middle, ahead.angle);
  if (Math.abs(lean) > limit + 0.25) return;
  const angle = Math.abs(lean) > limit ? middle + Math.sign(lean) * limit : ahead.angle;
  const x = from.x + STEP * Math.cos(ahead.chord);
  const y = from.y + STEP * Math.sin(ahead.chord);
  const depth = from.depth + 1;
  const lost = from.gap > 8;
  const reach = Math.min(22, 5 + options.width / 2 + 0.22 * from.gap);
  const look = lookAcross(like, x, y, angle, reach, options.width, from.level);
  const spread = 1.3 + 0.13 * from.gap;
  for (const peak of look.peaks) {
    const px = x - Math.sin(angle) * peak.offset;
    const py = y + Math.cos(angle) * peak.offset;
    const off = Math.abs(peak.offset) / spread;
    let cost = 0.9 * (off < 3 ? off * off : 6 * off - 9);
    let heading = Math.atan2(py - from.y, px - from.x);
    let quality = peak.quality;
    if (lost) {
      const found = headingAt(like, px, py, angle, options.width, from.level);
      heading = found ?? angle;
      // a stroke found again runs on, and about the way it was expected to
      if (found === null) quality *= 0.3;
      else cost += 1.5 * (turn(angle, found) / 0.3) ** 2;
    }
    cost += STEP * (options.taken?.(px, py) ?? 0);
    const step = { x: px, y: py, angle: angle + clampTurn(turn(angle, heading)), quality, parent: from, depth };
    const level = from.level + 0.12 * (peak.ridge - from.level);
    yield finish(step, from, from.score + STEP * (quality - SEEN_WORTH) - cost, 0, within(level, options.usual));
  }
  const perPixel = look.hidden > 0.5 ? 0.08 : look.inked > 0.12 ? 0.4 : from.gap < 18 ? 0.6 : 1.4;
  const score = from.score - STEP * (perPixel + (options.taken?.(x, y) ?? 0));
  yield finish({ x, y, angle, quality: 0, parent: from, depth }, from, score, from.gap + STEP, from.level);
}

/** Which way a stroke runs from a point on, judged by where it is a little further; null where it does not go on. */
function headingAt(like: Likeness, x: number, y: number, angle: number, width: number, level: number): number | null {
  const far = 7;
  const look = lookAcross(like, x + far * Math.cos(angle), y + far * Math.sin(angle), angle, 6, width, level);
  let best: number | null = null;
  for (const p of look.peaks) if (best === null || Math.abs(p.offset) < Math.abs(best)) best = p.offset;
  return best === null ? null : angle + Math.atan2(best, far);
}

const clampTurn = (d: number) => Math.max(-0.5, Math.min(0.5, d));
const within = (level: number, usual: number) => Math.min(1.15 * usual, Math.max(0.35 * usual, level));

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
