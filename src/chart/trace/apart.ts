import type { TracedCurve } from './trace.ts';

/** Two curves that share more than this of the shorter one's way are one line traced twice, or one that strayed. */
const SHARED = 0.12;

/**
 * Taps whose curves came out as one: each is tried again with the other's way taken, and the fuller pair is kept.
 * @param again traces one of the taps anew, keeping off the curves given
 * @returns the curves, and the pairs that still run together
 */
export function keepApart(
  curves: readonly (TracedCurve | null)[],
  again: (index: number, others: readonly TracedCurve[]) => TracedCurve | null,
): { curves: (TracedCurve | null)[]; together: [number, number][] } {
  const out = [...curves];
  const together: [number, number][] = [];
  for (let i = 0; i < out.length; i++)
    for (let j = i + 1; j < out.length; j++) {
      const a = out[i];
      const b = out[j];
      if (!a || !b) continue;
      const before = sharedWay(a, b);
      if (before < SHARED) continue;
      const pairs = [
        [a, again(j, [a])],
        [again(i, [b]), b],
      ] as const;
      let best: { pair: readonly [TracedCurve, TracedCurve]; worth: number; shared: number } | null = null;
      for (const [p, q] of pairs) {
        if (!p || !q) continue;
        const shared = sharedWay(p, q);
        const worth = (p.trace.x.length + q.trace.x.length) * (1 - shared);
        if (!best || worth > best.worth) best = { pair: [p, q], worth, shared };
      }
      if (best && best.shared < before) [out[i], out[j]] = best.pair;
      if (Math.min(before, best?.shared ?? 1) >= SHARED) together.push([i, j]);
    }
  return { curves: out, together };
}

/** Share of the shorter curve's way that lies on the other's, 0..1. Source: definition. */
export function sharedWay(a: TracedCurve, b: TracedCurve): number {
  const cells = new Set<number>();
  const key = (x: number, y: number) => Math.round(y / 4) * 4096 + Math.round(x / 4);
  for (let i = 0; i < b.trace.x.length; i++)
    for (const d of [-2, 0, 2]) cells.add(key(b.trace.x[i]!, b.trace.y[i]! + d));
  let shared = 0;
  for (let i = 0; i < a.trace.x.length; i++) if (cells.has(key(a.trace.x[i]!, a.trace.y[i]!))) shared++;
  return shared / Math.min(a.trace.x.length, b.trace.x.length);
}
