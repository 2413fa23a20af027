import type { FrameSigns } from './frame-signs.ts';

/** How much each sign says for a plot frame; letters inside say most where no labels stand outside. */
const WEIGHTS = {
  hold: 7,
  weakest: 3,
  curves: 2,
  labels: 2.8,
  label: 1,
  text: -3,
  textUnlabelled: -7,
  size: 4,
  margin: 20,
} as const;
const BASE = -10.4;
/** Words on and beside curves are no text. */
const FREE_TEXT = 0.2;
const FREE_MARGIN = 0.02;

/** From the sum of the signs to how often such a frame was the right one, on generated photos. */
const CALIBRATION = { slope: 0.75, offset: -1.6 } as const;

/** 0..1: how likely four lines frame a plot, all signs taken together. */
export function likenessOf(signs: FrameSigns): number {
  const text = Math.max(0, signs.text - FREE_TEXT);
  const sum =
    BASE +
    WEIGHTS.hold * signs.hold +
    WEIGHTS.weakest * signs.weakest +
    WEIGHTS.curves * Math.min(1, signs.curves) +
    WEIGHTS.labels * signs.labels +
    WEIGHTS.label * signs.label +
    (WEIGHTS.text + WEIGHTS.textUnlabelled * (1 - signs.labels)) * text +
    WEIGHTS.size * signs.size +
    WEIGHTS.margin * Math.min(0, signs.margin - FREE_MARGIN);
  return 1 / (1 + Math.exp(-(CALIBRATION.slope * sum + CALIBRATION.offset)));
}
