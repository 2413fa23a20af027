import type { AloneFlow } from '../state/alone.ts';

/** Places on one shared ruler, in percent of its width: every bar and the post of all blowers stand on it. */
export type Ruler = { low: number; high: number };

/** A ruler that holds all bars and the need, with a little air at both ends; null when there is nothing to show. */
export function rulerFor(flows: readonly (AloneFlow | null | undefined)[], need: number | null): Ruler | null {
  const values = flows.flatMap((flow) => (flow ? [...flow.flow95_m3_s] : []));
  if (need !== null) values.push(need);
  if (values.length === 0) return null;
  const low = Math.min(...values);
  const high = Math.max(...values);
  const air = Math.max((high - low) * 0.08, high * 0.02, 1e-6);
  return { low: Math.max(0, low - air), high: high + air };
}

export const placeOn = (ruler: Ruler, value: number): number =>
  Math.min(100, Math.max(0, (100 * (value - ruler.low)) / (ruler.high - ruler.low)));

export type Bar = { left: number; width: number; notch: number };

export const barOn = (ruler: Ruler, flow: AloneFlow): Bar => {
  const [low, high] = flow.flow95_m3_s;
  const left = placeOn(ruler, low);
  return { left, width: Math.max(1, placeOn(ruler, high) - left), notch: placeOn(ruler, flow.flow_m3_s) };
};
