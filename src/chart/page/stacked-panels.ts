import type { AxisHint } from '../hints.ts';

type Xy = readonly [number, number];
type Quad = readonly [Xy, Xy, Xy, Xy];

/** Panels of one chart stand closer together than this share of the lower one, and their sides line up this well. */
const WIDEST_GAP = 0.35;
const OFF_LINE = 0.025;

/** Whether one frame stands over the other on the same sides, or beside it on a photo turned by 90°. */
export function areStacked(a: Quad, b: Quad): boolean {
  return isOver(a, b) || isOver(b, a) || isOver(turnedQuad(a), turnedQuad(b)) || isOver(turnedQuad(b), turnedQuad(a));
}

const turnedQuad = ([bl, br, tr, tl]: Quad): Quad => [br, tr, tl, bl];

/** Whether `low` goes on below `high`: its upper corners lie on the sides of `high`, a little beyond their ends. */
function isOver([bl, br, tr, tl]: Quad, [, , ltr, ltl]: Quad): boolean {
  const gaps = [beyond(tl, bl, ltl), beyond(tr, br, ltr)];
  return gaps.every((g) => g !== null && g > -0.02 && g < WIDEST_GAP);
}

/** How far a point lies beyond the end of a side, in lengths of it; null where it is off the side's course. */
function beyond(from: Xy, to: Xy, p: Xy): number | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const along = ((p[0] - from[0]) * dx + (p[1] - from[1]) * dy) / square;
  const off = ((p[0] - from[0]) * dy - (p[1] - from[1]) * dx) / square;
  return Math.abs(off) < OFF_LINE * 1.5 ? along - 1 : null;
}

type Scale = Pick<AxisHint, 'quantity' | 'unit' | 'min' | 'max'>;

/** Whether the scales of two stacked plots may be one chart's: not where each has a flow scale of its own, and another one. */
export function mayShareFlow(plot: readonly Scale[], panel: readonly Scale[]): boolean {
  const [a, b] = [plot, panel].map((scales) => scales.find(({ quantity }) => quantity === 'flow'));
  return !a || !b || (a.unit === b.unit && a.min === b.min && a.max === b.max);
}
