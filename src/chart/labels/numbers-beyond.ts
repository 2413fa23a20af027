import { middleOf } from '../../numeric/middle-of.ts';
import type { Word } from './chains.ts';
import type { ScaleFit } from './scale-fit.ts';
import type { Surroundings } from './surroundings.ts';
import type { TickGroup } from './tick-groups.ts';

/** So far beyond the frame, share of its side, a scale may go on where the frame was found too small. */
const FURTHEST = 0.6;
/** Beyond the side by more than half a label: what is nearer belongs to the row already. */
const BEYOND = 0.02;
/** In line with the numbers, and as large as they, shares of their height. */
const IN_LINE = 0.55;
const ALIKE = 1.45;
/** Where the next number of a linear scale would stand, shares of its step. */
const ON_STEP = 0.12;
const MOST_STEPS = 6;

/**
 * Words in line with the numbers of a linear scale where its next ones would stand, beyond the side of the frame: where
 * they are numbers, the frame is larger than it was taken for.
 */
export function numbersBeyond(
  { frame }: Surroundings,
  group: TickGroup,
  fit: ScaleFit,
  words: readonly Word[],
): Word[] {
  const { step, slope, offset } = fit;
  if (fit.scale === 'log' || !step) return [];
  const isUpright = group.side === 'left' || group.side === 'right';
  const edges: ((w: Word) => number)[] = isUpright
    ? [(w) => w.x0, (w) => w.x1, (w) => (w.x0 + w.x1) / 2]
    : [(w) => w.y0, (w) => w.y1];
  const lines = edges.map((edge) => middleOf(group.words.map(edge)));
  const size = middleOf(group.words.map((w) => w.size));
  const believed = fit.believed.map(({ value }) => value);
  const nearest = (value: number): number =>
    believed.reduce((a, b) => (Math.abs(b - value) < Math.abs(a - value) ? b : a));
  return words.filter((w) => {
    if (w.run !== 'level' || w.size > ALIKE * size || size > ALIKE * w.size) return false;
    if (!edges.some((edge, k) => Math.abs(edge(w) - lines[k]!) < IN_LINE * size)) return false;
    const at = isUpright
      ? 1 - ((w.y0 + w.y1) / 2 - frame.y0) / (frame.y1 - frame.y0)
      : ((w.x0 + w.x1) / 2 - frame.x0) / (frame.x1 - frame.x0);
    if ((at > -BEYOND && at < 1 + BEYOND) || at < -FURTHEST || at > 1 + FURTHEST) return false;
    const value = offset + slope * at;
    const steps = (value - nearest(value)) / step;
    return Math.abs(steps) < MOST_STEPS && Math.abs(steps) > 0.5 && Math.abs(steps - Math.round(steps)) < ON_STEP;
  });
}
