import type { Doubt } from './doubts.ts';
import type { AxisQuantity } from './hints.ts';

/** Nothing is ever quite certain. */
const BEST = 0.98;
/** Below this a person should look. */
const LEAST_SURE = 0.6;

/** How likely one step of a reading is right: doubts about the same step mostly have the same cause, so the gravest counts. */
export const stepSureness = (doubts: readonly Doubt[]): number =>
  doubts.reduce((least, d) => Math.min(least, d.confidence), BEST);

type Shown = {
  readonly axes: readonly { readonly id: string; readonly quantity: AxisQuantity }[];
  readonly curves: readonly { readonly yAxis: string; readonly quantity: AxisQuantity }[];
};

/**
 * How likely a whole reading is right, and whether a person should look. The frame, each axis and the curves together are
 * steps that go wrong each by itself; the worst curve counts, as what makes one hard to follow does so for the others. An efficiency is worked out again from pressure and power, and a power scale without a curve is read
 * by nobody: doubts about these are said, and do not count.
 */
export function sureness(shown: Shown, doubts: readonly Doubt[]): { overall: number; needsReview: boolean } {
  const counted = doubts.filter((d) => counts(d.warning.path, shown));
  const steps = new Set(counted.map(({ warning }) => stepOf(warning.path)));
  const ofStep = (step: string): number => stepSureness(counted.filter((d) => stepOf(d.warning.path) === step));
  const overall = [...steps].reduce((p, step) => p * (ofStep(step) / BEST), BEST);
  return { overall, needsReview: overall < LEAST_SURE || counted.some((d) => d.serious) };
}

/** The part of the answer a path points into: "/axes/1", "/curves", "/frameCorners_px" … */
const stepOf = (path: string): string => path.split('/', path.startsWith('/axes/') ? 3 : 2).join('/');

function counts(path: string, { axes, curves }: Shown): boolean {
  const [, list, index] = path.split('/');
  if (index === undefined) return true;
  if (list === 'curves') return curves[Number(index)]?.quantity !== 'efficiency';
  const axis = list === 'axes' ? axes[Number(index)] : undefined;
  if (!axis) return true;
  if (axis.quantity === 'shaft_power') return curves.some((c) => c.yAxis === axis.id);
  return axis.quantity !== 'efficiency';
}
