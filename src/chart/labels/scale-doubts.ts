import { pointer } from '../../issues/result.ts';
import type { Doubt } from '../doubts.ts';
import type { ReadScale } from './read-scales.ts';
import type { ScaleEnd } from './scale-ends.ts';

/** A doubt about an axis, in the form all doubts of a reading have. */
export const axisDoubt = (code: string, index: number, text: string, confidence: number, serious: boolean): Doubt => ({
  warning: { code, path: pointer('axes', index), text },
  confidence,
  serious,
});

/** How far the printed numbers bear a scale out. @param index of the axis; @param what its quantity, in words */
export function scaleReadingDoubts(scale: ReadScale, index: number, what: string): Doubt[] {
  const { fit, ticked, low, high, labels, residual } = scale;
  // where a number itself stands at the end, it needs not be round
  const isPrinted = (end: ScaleEnd): boolean => fit.believed.some(({ value }) => value === end.value);
  const roughest = Math.max(0, ...[low, high].filter((end) => !isPrinted(end)).map((end) => end.roughness));
  const out: Doubt[] = [];
  const n = new Set(fit.believed.map((b) => b.value)).size;
  const say = (code: string, text: string, confidence: number, serious: boolean) =>
    out.push(axisDoubt(code, index, text, confidence, serious));
  if (n < 4)
    say(
      'scale-few-labels',
      `Only ${n} numbers of the ${what} scale could be read: please check both ends.`,
      0.55,
      true,
    );
  else if (n === 4) say('scale-few-labels', `Four numbers of the ${what} scale could be read.`, 0.95, false);
  const against = fit.against;
  if (against > 0) {
    const share = against / (against + fit.believed.length);
    say(
      'scale-labels-disagree',
      `${against} of ${against + fit.believed.length} numbers along the ${what} scale were read differently from what the others say.`,
      1 - share,
      share > 0.25,
    );
  }
  const repaired = fit.believed.filter((b) => b.isRepaired).length;
  if (scale.arePointsUnsure)
    say('scale-point-lost', `The numbers of the ${what} scale disagree about where the decimal point is.`, 0.5, true);
  else if (repaired) {
    const share = repaired / fit.believed.length;
    say('scale-point-lost', `A decimal point on the ${what} scale was hard to see.`, share > 0.4 ? 0.9 : 0.95, false);
  }
  const weak = fit.believed.filter((b) => labels[b.index]!.confidence < 0.6).length;
  if (weak > 0.5 * fit.believed.length)
    say('scale-labels-faint', `The numbers of the ${what} scale are hard to read.`, 0.7, fit.believed.length < 6);
  if (scale.isInside && !ticked)
    say(
      'scale-ends-unsure',
      `No ticks were found for the numbers of the ${what} scale inside the plot: please check both ends.`,
      n > 5 && residual < 0.001 ? 0.9 : 0.5,
      n < 6 || residual > 0.001,
    );
  else if (roughest > 0.002) {
    const isSharp = ticked >= 4 && residual < 0.0012;
    const text = isSharp ? 'does not end at printed numbers' : 'ends at no printed number: please check both ends';
    say('scale-ends-unsure', `The ${what} scale ${text}.`, isSharp ? 0.8 : 0.5, !isSharp);
  } else if (roughest > 0.0005 && residual > 0.0015)
    say('scale-ends-unsure', `The ends of the ${what} scale lie between its printed numbers.`, 0.75, residual > 0.0025);
  const moved = Math.max(low.moved, high.moved);
  if (moved > 0.009)
    say(
      'scale-ends-unsure',
      `The printed numbers of the ${what} scale stand a little off the ends of the plot.`,
      0.8,
      moved > 0.018 || n < 6,
    );
  if (residual > (ticked ? 0.004 : 0.007))
    say(
      'scale-uneven',
      `The numbers of the ${what} scale stand unevenly; the page may be bent.`,
      0.7,
      residual > 0.007,
    );
  return out;
}
