import { solveLower, solveUpper } from '../numeric/cholesky.ts';
import { normalCumulative } from '../numeric/normal.ts';
import { descend, pinnedAt, type Minimum } from './descend.ts';
import type { Comparison } from './residuals.ts';
import { UNKNOWN } from './unknowns.ts';

/**
 * Belief about the curve along its level of flow, where a bell curve would not do: readings at small flows rule out a short
 * curve much more sharply than a long one. For each level the rest is a bell curve again.
 * Source: H. Rue, S. Martino & N. Chopin, J. R. Stat. Soc. B 71 (2009) 319–392 (nested Laplace approximation).
 */
export type AlongFlow = {
  /** level of flow [deviate] and the best of everything else there, rising in level */
  nodes: { level: number; z: Float64Array; precision: Float64Array }[];
  /** level of flow that is exceeded with the chance that a standard normal deviate exceeds this one */
  levelAt(deviate: number): number;
};

/** Levels are tried at this distance, in standard deviations of the bell curve. */
const SPACING = 1.4;
/** The bell curve will do where it foresees the ln chance at the first levels to either side this closely. */
const BELL_ENOUGH = 0.35;
const MOST_NODES_A_SIDE = 5;
/** Levels this much less likely than the best, in ln, hardly ever happen. */
const HARDLY_EVER = 4;
/** Steps between two nodes when chances are added up. */
const FINE = 16;

/** Null where the bell curve around the mode is good enough. */
export function alongFlow(compare: Comparison, mode: Minimum): AlongFlow | null {
  const n = compare.unknowns;
  const direction = new Float64Array(n);
  direction[UNKNOWN.flowLevel] = 1;
  // covariance of everything with the level of flow, over the level's own variance: how the rest follows it
  const half = solveLower(mode.precision, n, direction);
  const variance = half.reduce((s, v) => s + v * v, 0);
  const sd = Math.sqrt(variance);
  const follow = solveUpper(mode.precision, n, Float64Array.from(half)).map((v) => v / variance);
  const at = (from: Minimum, level: number): Minimum => {
    const by = level - from.z[UNKNOWN.flowLevel]!;
    const start = from.z.map((v, a) => v + by * follow[a]!);
    start[UNKNOWN.flowLevel] = level;
    return descend(compare, start, UNKNOWN.flowLevel);
  };
  const bell = { centre: mode.z[UNKNOWN.flowLevel]!, sd };
  const middle = pinnedAt(mode, UNKNOWN.flowLevel);
  const best = lnChance(middle);
  const sides = [-1, 1].map((side) => at(mode, bell.centre + side * SPACING * sd));
  if (sides.every((m) => Math.abs(lnChance(m) - best + SPACING ** 2 / 2) < BELL_ENOUGH)) return null;

  const nodes: Minimum[] = [middle, ...sides];
  let most = Math.max(...nodes.map(lnChance));
  sides.forEach((first, i) => {
    let last = first;
    for (let k = 2; k <= MOST_NODES_A_SIDE && lnChance(last) > most - HARDLY_EVER; k++) {
      last = at(last, last.z[UNKNOWN.flowLevel]! + (i === 0 ? -1 : 1) * SPACING * sd);
      nodes.push(last);
      most = Math.max(most, lnChance(last));
    }
  });
  nodes.sort((a, b) => a.z[UNKNOWN.flowLevel]! - b.z[UNKNOWN.flowLevel]!);
  return {
    nodes: nodes.map(({ z, precision }) => ({ level: z[UNKNOWN.flowLevel]!, z, precision })),
    levelAt: quantileOf(
      nodes.map((m) => m.z[UNKNOWN.flowLevel]!),
      nodes.map((m) => lnChance(m) - most),
      bell,
    ),
  };
}

/** ln of the chance of a place with everything not pinned there integrated out, up to a constant. Source: Laplace's method. */
export function lnChance({ cost, sd, precision, z }: Minimum): number {
  let sum = -cost;
  for (let i = 0; i < sd.length; i++) sum -= Math.log(sd[i]!);
  for (let a = 0; a < z.length; a++) sum -= Math.log(precision[a * z.length + a]!);
  return sum;
}

/** Inverse of the cumulated chance. What ln chance is off the bell curve goes straight from node to node. */
function quantileOf(
  levels: number[],
  lnChances: number[],
  bell: { centre: number; sd: number },
): (deviate: number) => number {
  const onBell = (level: number) => -0.5 * ((level - bell.centre) / bell.sd) ** 2;
  const off = lnChances.map((v, i) => v - onBell(levels[i]!));
  const fine: number[] = [];
  const chance: number[] = [];
  const cumulated: number[] = [0];
  for (let i = 0; i + 1 < levels.length; i++)
    for (let k = i === 0 ? 0 : 1; k <= FINE; k++) {
      const level = levels[i]! + ((levels[i + 1]! - levels[i]!) * k) / FINE;
      fine.push(level);
      chance.push(Math.exp(onBell(level) + off[i]! + ((off[i + 1]! - off[i]!) * k) / FINE));
    }
  for (let j = 1; j < fine.length; j++)
    cumulated.push(cumulated[j - 1]! + 0.5 * (chance[j]! + chance[j - 1]!) * (fine[j]! - fine[j - 1]!));
  const whole = cumulated.at(-1)!;
  return (deviate) => {
    const wanted = normalCumulative(deviate) * whole;
    let low = 0;
    let high = fine.length - 1;
    while (high - low > 1) {
      const mid = (low + high) >> 1;
      if (cumulated[mid]! > wanted) high = mid;
      else low = mid;
    }
    const step = cumulated[high]! - cumulated[low]!;
    return fine[low]! + (step > 0 ? (wanted - cumulated[low]!) / step : 0) * (fine[high]! - fine[low]!);
  };
}
