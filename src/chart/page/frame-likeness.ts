import type { FrameSigns } from './frame-signs.ts';

/** How much each sign says for a plot frame. */
const WEIGHTS = { hold: 7, weakest: 3, curves: 2, labels: 2, label: 1, text: -5, size: 4, margin: 20 } as const;
const BASE = -9.5;

/** 0..1: how likely four lines frame a plot, all signs taken together. */
export function likenessOf(signs: FrameSigns): number {
  const z =
    BASE +
    WEIGHTS.hold * signs.hold +
    WEIGHTS.weakest * signs.weakest +
    WEIGHTS.curves * Math.min(1, signs.curves) +
    WEIGHTS.labels * signs.labels +
    WEIGHTS.label * signs.label +
    WEIGHTS.text * Math.max(0, signs.text - 0.2) +
    WEIGHTS.size * signs.size +
    WEIGHTS.margin * Math.min(0, signs.margin - 0.02);
  return 1 / (1 + Math.exp(-z));
}
