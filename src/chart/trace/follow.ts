import { turn, type StrokeStep } from './foresee.ts';
import type { Likeness } from './likeness.ts';
import { waysOn, type Bounds, type FollowOptions, type Guess } from './ways-on.ts';

const BEAM = 14;

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
  let beam: Guess[] = [
    { ...seed, parent: null, score: 0, gap: 0, run: 0, breaks: 0, level: options.usual, best: seed, bestScore: 0 },
  ];
  let winner = beam[0]!;
  const given: Guess[] = [];
  const most = options.mostSteps ?? MOST_STEPS;
  for (let k = 0; k < most && beam.length; k++) {
    const next: Guess[] = [];
    for (const guess of beam)
      for (const g of waysOn(like, guess, forward, options)) {
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

/** A guess this far below its own best can't earn it back. */
const MOST_DEBT = 140;
const MOST_STEPS = 900;

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
