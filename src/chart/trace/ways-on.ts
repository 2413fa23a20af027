import { lookAcross, type Look } from './cross-section.ts';
import { foresee, turn, type StrokeStep } from './foresee.ts';
import type { Likeness } from './likeness.ts';
import type { StrokeStyle } from './stroke-style.ts';

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
  readonly style: StrokeStyle;
  /** ends the way after so many steps of five pixels */
  readonly mostSteps?: number;
  /** penalty (0 or more, per pixel) for going where another curve was already found */
  readonly taken?: (x: number, y: number) => number;
};

const STEP = 5;
const SEEN_WORTH = 0.35;
const MEMORY_PX = 24;
const LONG_MEMORY_PX = 60;

/** A guess of how the stroke went so far, and what it earned. */
export type Guess = StrokeStep & {
  readonly score: number;
  /** length without, and with, a stroke in sight up to here, sheet pixels */
  readonly gap: number;
  readonly run: number;
  /** how often bare paper interrupted the stroke so far */
  readonly breaks: number;
  /** what the stroke has been giving lately: print fades, and glare and worn plates fade it more */
  readonly level: number;
  readonly best: StrokeStep;
  readonly bestScore: number;
  readonly parent: Guess | null;
};

/** All ways on from a guess: along each stroke seen a step ahead, and without any. */
export function* waysOn(like: Likeness, from: Guess, forward: 1 | -1, options: FollowOptions): Generator<Guess> {
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
  const { style } = options;
  const limit = Math.PI / 2 + OVERHANG;
  const middle = forward === 1 ? 0 : Math.PI;
  const lean = turn(middle, ahead.angle);
  if (Math.abs(lean) > limit + 0.25) return;
  const angle = Math.abs(lean) > limit ? middle + Math.sign(lean) * limit : ahead.angle;
  const x = from.x + STEP * Math.cos(ahead.chord);
  const y = from.y + STEP * Math.sin(ahead.chord);
  const depth = from.depth + 1;
  const lost = from.gap > 8;
  const reach = Math.min(42, 5 + options.width / 2 + 0.3 * from.gap);
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
    const worth = ownPrint(style, from, peak.ridge) ? quality - SEEN_WORTH : -FOREIGN_COST;
    yield finish(step, from, from.score + STEP * worth - cost, 0, within(level, options.usual));
  }
  const isBare = from.gap === 0 && look.hidden <= 0.5 && look.inked <= 0.12 && style.longestGap === 0;
  // a solid line is interrupted now and then; one that keeps breaking up is another, dashed one
  const again = isBare ? Math.min(MOST_BREAK_COST, BREAK_COST * from.breaks) : 0;
  const score = from.score - again - STEP * (gapCost(style, from, look) + (options.taken?.(x, y) ?? 0));
  yield finish(
    { x, y, angle, quality: 0, parent: from, depth },
    from,
    score,
    from.gap + STEP,
    from.level,
    from.breaks + (isBare ? 1 : 0),
  );
  if (look.peaks.length === 0 && from.gap === 0 && style.longestGap === 0)
    yield* roundCorners(like, from, angle, options);
}

/** What a pixel costs where the stroke is not seen: little behind the grid or other ink, much on bare paper. */
function gapCost(style: StrokeStyle, { gap }: Guess, look: Look): number {
  if (look.hidden > 0.5) return 0.08;
  if (look.blotted) return 0.12;
  if (style.longestGap > 0) return gap < 1.5 * style.longestGap + 4 ? 0.25 : 1.2;
  if (look.inked > 0.12) return 0.4;
  return gap < 18 ? 0.6 : 1.4;
}

const FOREIGN_COST = 0.3;
const BREAK_COST = 2;
const MOST_BREAK_COST = 10;

/** A dashed curve that suddenly runs on unbroken, or a dotted one that is suddenly twice as dark, is another curve. */
const ownPrint = (style: StrokeStyle, { run, level }: Guess, ridge: number): boolean =>
  run < style.longestDash + 14 && !(style.longestDash < 7 && ridge > 1.7 * level);

/** A solid stroke that stops short may turn a corner, as lines drawn from test point to test point do. */
function* roundCorners(like: Likeness, from: Guess, angle: number, options: FollowOptions): Generator<Guess> {
  for (const by of [-1, -0.5, 0.5, 1]) {
    const way = angle + by;
    const x = from.x + CORNER_PX * Math.cos(way);
    const y = from.y + CORNER_PX * Math.sin(way);
    const look = lookAcross(like, x, y, way, 3, options.width, from.level);
    const peak = look.peaks.find((p) => p.quality > 0.6);
    if (!peak) continue;
    const px = x - Math.sin(way) * peak.offset;
    const py = y + Math.cos(way) * peak.offset;
    const heading = headingAt(like, px, py, way, options.width, from.level);
    if (heading === null) continue;
    const step = { x: px, y: py, angle: heading, quality: peak.quality, parent: from, depth: from.depth + 1 };
    yield finish(step, from, from.score - 20 * by * by, 0, from.level);
  }
}

const CORNER_PX = 8;

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

function finish(
  step: StrokeStep,
  from: Guess,
  score: number,
  gap: number,
  level: number,
  breaks: number = from.breaks,
): Guess {
  const better = gap === 0 && score > from.bestScore;
  const run = gap === 0 ? from.run + STEP : 0;
  const { x, y, angle, quality, depth } = step;
  const { best, bestScore } = from;
  // written out: this runs tens of thousands of times a tap
  const guess: { -readonly [K in keyof Guess]: Guess[K] } = {
    x,
    y,
    angle,
    quality,
    parent: from,
    depth,
    score,
    gap,
    run,
    breaks,
    level,
    best,
    bestScore,
  };
  if (better) {
    guess.best = guess;
    guess.bestScore = score;
  }
  return guess;
}
