import type { FrameMap } from '../frame/frame-map.ts';
import type { Corners } from '../spaces.ts';
import type { ReadScale } from './read-scales.ts';
import { fitScale, type ScaleFit } from './scale-fit.ts';

/** A frame that numbers speak for, and the panel that shares its flow axis where they tell of one. */
export type NumberedFrame = { readonly corners: Corners; readonly panel?: Corners };

/** What is known of the numbers along a frame: its scales, and where its shares lie in the photo. */
type Numbered = { readonly scales: readonly ReadScale[]; readonly map: Pick<FrameMap, 'toPhoto'> };

/** Two sides of a frame as shares of another one, from its left or bottom to its right or top. */
type Stretch = readonly [from: number, to: number];

/** Numbers that end this near a side belong to it, share of the side. */
const AT_SIDE = 0.012;
/** A side further off than this from the last number was no slip: numbers are left out at the ends of many scales. */
const FURTHEST = 0.35;
/** So many different numbers tell where a scale ends. */
const ENOUGH = 4;
/** An end rougher than a half of the printed step, see `ScaleEnd.roughness`, is believed less than the numbers. */
const ROUGH = 0.001;
/** Numbers of a second scale in one row, summed confidences. */
const SECOND_SCALE = 2;
const WHOLE: Stretch = [0, 1];

/**
 * The frame whose sides lie where the numbers along it end, for one whose sides do not: a rule over the page or the next
 * line of graph paper was taken for its side, or only some cells of its grid.
 * @returns null where every side is at a number, or at a round value near one
 */
export function frameToNumbers({ scales, map }: Numbered): NumberedFrame | null {
  const across = toNumbers(scales.filter(isLevel));
  const up = toNumbers(scales.filter((s) => !isLevel(s)));
  return across === WHOLE && up === WHOLE ? null : { corners: cornersAt(map, across, up) };
}

/**
 * The frames in one that was drawn round several plots: where a row or a column of numbers begins anew, so does a plot.
 * Plots over each other share their flow axis; plots beside each other share nothing.
 */
export function framesApart({ scales, map }: Numbered): NumberedFrame[] {
  return scales.flatMap((scale): NumberedFrame[] => {
    const parts = partsOf(scale);
    if (!parts) return [];
    if (isLevel(scale)) return parts.map((part) => ({ corners: cornersAt(map, part, WHOLE) }));
    const [low, high] = parts.map((part) => cornersAt(map, WHOLE, part)) as [Corners, Corners];
    return [
      { corners: high, panel: low },
      { corners: low, panel: high },
    ];
  });
}

const isLevel = ({ side }: ReadScale): boolean => side === 'bottom' || side === 'top';

/** Where the numbers along two opposite sides end, if one of those sides does not; the surest scale tells. */
function toNumbers(scales: readonly ReadScale[]): Stretch {
  const told = scales
    .filter(({ fit }) => new Set(fit.believed.map((b) => b.value)).size >= ENOUGH)
    .toSorted((a, b) => b.fit.weight - a.fit.weight);
  const [first] = told;
  if (!first) return WHOLE;
  const [from, to] = stretchOf(first.fit);
  const low =
    isOff(from, isBelowNought(first) ? Infinity : first.low.roughness) && !told.some((s) => isAt(stretchOf(s.fit)[0]))
      ? from
      : 0;
  const high = isOff(1 - to, first.high.roughness) && !told.some((s) => isAt(1 - stretchOf(s.fit)[1])) ? to : 1;
  return low === 0 && high === 1 ? WHOLE : [low, high];
}

/** No scale of a fan chart begins below nought unless a number says so. */
const isBelowNought = ({ low, fit }: ReadScale): boolean =>
  low.value < 0 && fit.believed.every(({ value }) => value >= 0);

const isAt = (inset: number): boolean => Math.abs(inset) < AT_SIDE;

/** Numbers beyond a side contradict it whatever it reads; those that end before it only where it reads nothing round. */
const isOff = (inset: number, roughness: number): boolean =>
  inset < -AT_SIDE || (inset > AT_SIDE && inset < FURTHEST && roughness > ROUGH);

/** From the first to the last number that a scale believes, shares of the side. */
function stretchOf({ believed, scale, offset, slope }: ScaleFit): Stretch {
  const places = believed.map(({ value }) => ((scale === 'log' ? Math.log(value) : value) - offset) / slope);
  return [Math.min(...places), Math.max(...places)];
}

/** Two scales in one row of numbers, one behind the other: the stretches from side to number and from number to side. */
function partsOf({ labels, fit }: ReadScale): readonly [Stretch, Stretch] | null {
  const believed = new Set(fit.believed.map(({ index }) => index));
  const second = fitScale(labels.filter((l, i) => l.numbers.length > 0 && !believed.has(i)));
  if (!second || second.weight < SECOND_SCALE) return null;
  const [a, b] = [stretchOf(fit), stretchOf(second)].toSorted((p, q) => p[0] - q[0]) as [Stretch, Stretch];
  return a[1] < b[0]
    ? [
        [0, a[1]],
        [b[0], 1],
      ]
    : null;
}

const cornersAt = ({ toPhoto }: Numbered['map'], [u0, u1]: Stretch, [v0, v1]: Stretch): Corners => [
  toPhoto(u0, v0),
  toPhoto(u1, v0),
  toPhoto(u1, v1),
  toPhoto(u0, v1),
];
