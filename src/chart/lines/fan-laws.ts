import { valueOf, type LineValues } from './line-values.ts';

/** How well two curves of one wheel agree when one is brought to the other's speed. */
export type SpeedMatch = {
  /** mean distance in value, as a share of the larger curve's highest value */
  readonly apart: number;
  /** share of the curve that could be compared, 0..1 */
  readonly overlap: number;
};

const POWERS = { static_pressure: 2, total_pressure: 2, shaft_power: 3, efficiency: 0, flow: 1 } as const;

/**
 * Brings `slow` to the speed of `fast` and compares: flow with the ratio of speeds, pressure with its square, power
 * with its cube.
 * @param ratio speed of `fast` over that of `slow`
 * Source: fan laws for one wheel and one density, e.g. ISO 5801:2017 §15 (incompressible).
 */
export function matchAtRatio(
  fast: LineValues,
  slow: LineValues,
  ratio: number,
  quantity: keyof typeof POWERS,
): SpeedMatch {
  const power = ratio ** POWERS[quantity];
  const top = Math.max(...fast.value, 1e-9);
  let sum = 0;
  let looks = 0;
  slow.flow.forEach((q, i) => {
    const there = valueOf(fast, q * ratio);
    if (there === null) return;
    // on a steep part a small shift in flow is a large one in value: the nearer of both counts
    const near = [0.985, 1, 1.015].map((f) => valueOf(fast, q * ratio * f) ?? there);
    sum += Math.min(...near.map((v) => Math.abs(v - slow.value[i]! * power)));
    looks++;
  });
  return { apart: looks ? sum / looks / top : 1, overlap: looks / slow.flow.length };
}

/** The ratio of speeds at which two curves agree best, 1..3; null where they never do. */
export function bestRatio(
  fast: LineValues,
  slow: LineValues,
  quantity: keyof typeof POWERS,
): { ratio: number; apart: number } | null {
  let best: { ratio: number; apart: number } | null = null;
  for (let ratio = 1.01; ratio <= 3; ratio *= 1.005) {
    const { apart, overlap } = matchAtRatio(fast, slow, ratio, quantity);
    if (overlap >= 0.6 && (!best || apart < best.apart)) best = { ratio, apart };
  }
  return best;
}

/**
 * How far two curves are from being those of one wheel at two speeds, whatever the speeds: mean distance in value once
 * brought together, as a share of the highest value. A rough and quick look.
 */
export function familyApart(a: LineValues, b: LineValues, quantity: keyof typeof POWERS): number {
  const [fast, slow] = Math.max(...a.flow) >= Math.max(...b.flow) ? [a, b] : [b, a];
  const top = Math.max(...fast.value, 1e-9);
  let least = 1;
  for (let ratio = 1; ratio < 2.6; ratio *= 1.02) {
    let sum = 0;
    let looks = 0;
    for (let i = 1; i < slow.flow.length; i += 4) {
      const there = valueOf(fast, slow.flow[i]! * ratio);
      if (there === null) continue;
      sum += Math.abs(there - slow.value[i]! * ratio ** POWERS[quantity]);
      looks++;
    }
    if (looks > 6) least = Math.min(least, sum / looks / top);
  }
  return least;
}

/**
 * How unlike two curves of one wheel begin and end once both are brought to one speed, as shares of the larger last
 * flow: a sheet draws them over the same part of the wheel's range.
 * @param ratio speed of `fast` over that of `slow`
 */
export function rangesApart(fast: LineValues, slow: LineValues, ratio: number): { first: number; last: number } {
  const ends = ({ flow }: LineValues) => [Math.min(...flow), Math.max(...flow)] as const;
  const [a0, a1] = ends(fast);
  const [b0, b1] = ends(slow);
  const most = Math.max(a1, b1 * ratio);
  return { first: (a0 - b0 * ratio) / most, last: (a1 - b1 * ratio) / most };
}

/**
 * Speeds of the curves of one wheel as shares of the first one's, from the fan laws alone: each is brought to the
 * nearest faster one before it that it follows from.
 * @param values outermost curve first
 * @returns null for a curve that follows from none of the others
 */
export function relativeSpeeds(values: readonly LineValues[], quantity: keyof typeof POWERS): (number | null)[] {
  const out: (number | null)[] = values.map((_, i) => (i === 0 ? 1 : null));
  for (let j = 1; j < values.length; j++)
    for (let i = j - 1; i >= 0; i--) {
      if (out[i] === null) continue;
      const ratio = exactRatio(values[i]!, values[j]!, quantity);
      if (ratio === null) continue;
      out[j] = out[i]! / ratio;
      break;
    }
  return out;
}

/** Curves of one wheel brought together are no further apart than this, as a share of the highest value. */
const SAME_WHEEL = 0.012;

/** The ratio at which two curves lie on each other, to a thousandth; null where they never do. */
function exactRatio(fast: LineValues, slow: LineValues, quantity: keyof typeof POWERS): number | null {
  const rough = bestRatio(fast, slow, quantity);
  if (!rough || rough.apart > 2 * SAME_WHEEL) return null;
  const top = Math.max(...fast.value, 1e-9);
  let best = { ratio: 1, apart: 1 };
  for (let ratio = rough.ratio * 0.98; ratio < rough.ratio * 1.02; ratio *= 1.001) {
    const power = ratio ** POWERS[quantity];
    const apart = slow.flow.flatMap((q, i) => {
      const there = valueOf(fast, q * ratio);
      return there === null ? [] : [Math.abs(there - slow.value[i]! * power) / top];
    });
    const middle = apart.sort((a, b) => a - b)[apart.length >> 1] ?? 1;
    if (apart.length > 0.5 * slow.flow.length && middle < best.apart) best = { ratio, apart: middle };
  }
  return best.apart < SAME_WHEEL && best.ratio > 1.01 ? best.ratio : null;
}
