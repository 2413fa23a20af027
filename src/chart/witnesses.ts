import { pointer } from '../issues/result.ts';
import { cleared, type Doubt } from './doubts.ts';
import { SIDE_NAMES, type SideName } from './frame/find-sides.ts';
import type { SnappedFrame } from './frame/frame-snap.ts';
import type { FoundAxis } from './labels/name-axes.ts';
import { isRuled } from './grid/ruled.ts';
import type { ScaleGrid } from './grid/scale-grid.ts';
import type { ScaleEnd } from './labels/scale-ends.ts';

/** Doubts about the numbers of a scale that a printed grid settles, and where both ends are round. */
const BY_GRID: ReadonlySet<string> = new Set(['scale-few-labels', 'scale-labels-disagree', 'scale-labels-faint']);
const BY_GRID_TO_ROUND_ENDS: ReadonlySet<string> = new Set([...BY_GRID, 'scale-ends-unsure', 'scale-uneven']);

/** An end at a whole or half step of the printed numbers; see `ScaleEnd.roughness`. */
const HALF = 0.001;
/** An end at a quarter or fifth of a step; and how far from it the numbers may put the end, share of the side. */
const ROUND = 0.0015;
const IN_PLACE = 0.006;

/** The doubts about a scale after its grid was asked: lines at round values between both ends, in step with the numbers. */
export function askGrid({ from, doubts }: FoundAxis, grid: ScaleGrid | undefined): Doubt[] {
  if (!grid || !bearsOut(from, grid)) return [...doubts];
  const ends = [from.low, from.high];
  const areRound =
    ends.every(({ roughness }) => roughness < HALF) ||
    ends.every(({ roughness, moved }) => roughness < ROUND && moved < IN_PLACE);
  return cleared(doubts, areRound ? BY_GRID_TO_ROUND_ENDS : BY_GRID);
}

type Printed = { readonly low: ScaleEnd; readonly high: ScaleEnd; readonly fit: { readonly step: number } };

/** Whether the grid stands at round values of a scale and its lines keep step with the printed numbers. */
export function bearsOut({ low, high, fit }: Printed, grid: ScaleGrid): boolean {
  if (!isRuled(grid)) return false;
  if (!fit.step) return true;
  const steps = fit.step / (high.value - low.value) / grid.lattice!.spacing;
  return isWhole(steps) || isWhole(1 / steps);
}

const isWhole = (n: number): boolean => n > 0.5 && Math.abs(n - Math.round(n)) < 0.02;

/** Frames taken for plots less surely than this are asked about. */
const UNSURE_FRAME = 0.6;
/** A line of the grid may pass for the side of a plot that goes on beyond it. */
const LEAST_FOR_OPEN = 0.5;
const FRAME_UNSURE = new Set(['frame-unsure']);

/** A scale as it was read, and the grid along it. */
export type Witnessed = readonly [FoundAxis, ScaleGrid | undefined];

const runsAlong = (side: SideName, { quantity }: FoundAxis): boolean =>
  (quantity === 'flow') === (side === 'left' || side === 'right');

/** Whether an open side's place is told by ticks that stand where their numbers want them. */
export const isTickedOut = (side: SideName, scales: readonly Witnessed[]): boolean =>
  scales.some(([axis]) => runsAlong(side, axis) && isTickedSharply(axis));

/** Whether a scale has its last number right at a side, and none beyond it. */
const isNumberedAt = (side: SideName, axis: FoundAxis): boolean => {
  if (!runsAlong(side, axis) || !isTickedSharply(axis)) return false;
  const { fit, labels } = axis.from;
  const end = side === 'right' || side === 'top' ? 1 : 0;
  const out = (at: number): number => (end ? at - 1 : -at);
  const furthest = Math.max(...fit.believed.map(({ index }) => out(labels[index]!.at)));
  return Math.abs(furthest) < AT_SIDE;
};

/** A number stands at its tick to within a part of its own size, share of the side. */
const AT_SIDE = 0.012;

const isTickedSharply = ({ from: { ticked, residual } }: FoundAxis): boolean =>
  ticked >= LEAST_TICKS && residual < SHARP;

const LEAST_TICKS = 4;
/** Ticks on paper stand so exactly, share of the side, root mean square. */
const SHARP = 0.001;

/**
 * Whether the plot's edges are to be asked about: where they were hard to find, unless all four are printed or told and
 * the numbers along them stand at their ticks, or with the grid run from round value to round value.
 * @param confidence how surely the frame was found, 0..1
 * @param scales those found, each with its grid
 * @param isTold whether grid or ticks tell where a side lies
 */
export function askFrame(
  confidence: number,
  { sides }: SnappedFrame,
  scales: readonly Witnessed[],
  isTold: (side: SideName) => boolean,
): Doubt[] {
  if (confidence >= UNSURE_FRAME) return [];
  const doubt: Doubt = {
    warning: {
      code: 'frame-unsure',
      path: pointer('frameCorners_px'),
      text: 'The edges of the plot are hard to see: please check its corners.',
    },
    confidence: Math.max(0.3, confidence),
    serious: true,
  };
  const isSeen = (side: SideName): boolean => sides[side].kind === 'line' && !sides[side].isFaint;
  const isPrinted = SIDE_NAMES.every(
    (side) =>
      isSeen(side) ||
      (isTold(side) && (confidence > LEAST_FOR_OPEN || scales.some(([axis]) => isNumberedAt(side, axis)))),
  );
  const isRound = ({ from }: FoundAxis): boolean =>
    [from.low, from.high].every(({ roughness, moved }) => roughness < ROUND && moved < IN_PLACE);
  const sure = scales.filter(
    ([axis, grid]) => isTickedSharply(axis) || (grid && isRound(axis) && bearsOut(axis.from, grid)),
  );
  const isBorneOut = ['flow', 'pressure'].every((what) => sure.some(([{ quantity }]) => quantity.endsWith(what)));
  return isPrinted && isBorneOut ? cleared([doubt], FRAME_UNSURE) : [doubt];
}
