import { fail, ok, pointer, type Result } from '../issues/result.ts';
import type { ChartReading } from './reading.ts';

/** A reading of some of the taps, and where its taps and axes stand among all. */
export type PartReading = {
  readonly read: Result<ChartReading>;
  readonly seedAt: readonly number[];
  readonly axisAt: readonly number[];
};

/**
 * The readings of the taps of one chart's plots as one, in the order of the taps; issues where no plot gave a curve.
 * @param plot the main plot without curves: its frame, and its axes where no tap is read on them
 */
export function joinedTaps(
  { frameCorners_px, axes }: ChartReading,
  parts: readonly PartReading[],
): Result<ChartReading> {
  const placed = parts.map(({ read, seedAt, axisAt }) => {
    const moved = (path: string) => movedPath(path, { seeds: seedAt, axes: axisAt });
    if (!read.ok)
      return {
        curves: [],
        axes: [],
        sureness: { overall: 1, needsReview: read.issues.length > 0 },
        warnings: read.issues.map((i) => ({ code: 'no-line-under-tap', text: i.message, path: moved(i.path) })),
      };
    const { curves, confidence, warnings } = read.value;
    return {
      curves: curves.map((curve) => ({ ...curve, id: `c${seedAt[numberOf(curve.id) - 1]! + 1}` })),
      axes: read.value.axes.map((axis, i) => [axisAt[i]!, axis] as const),
      sureness: confidence,
      warnings: warnings.map((warning) => ({ ...warning, path: moved(warning.path) })),
    };
  });
  const all = new Map(axes.map((axis, i) => [i, axis]));
  // the plot's own word on a shared axis stands before a panel's
  for (const [at, axis] of placed.flatMap((p) => p.axes).reverse()) all.set(at, axis);
  const curves = placed.flatMap((p) => p.curves).sort((a, b) => numberOf(a.id) - numberOf(b.id));
  if (!curves.length) return fail(parts.flatMap(({ read }) => (read.ok ? [] : read.issues)));
  return ok({
    frameCorners_px,
    axes: [...all].sort(([a], [b]) => a - b).map(([, axis]) => axis),
    curves,
    confidence: {
      overall: Math.min(...placed.map(({ sureness }) => sureness.overall)),
      needsReview: placed.some(({ sureness }) => sureness.needsReview),
    },
    warnings: placed.flatMap((p) => p.warnings),
  });
}

/** Curves of taps are called after them: c1 is that of the first. */
const numberOf = (id: string): number => Number(id.slice(1));

function movedPath(path: string, places: Record<'seeds' | 'axes', readonly number[]>): string {
  const [, list, index, ...rest] = path.split('/');
  const at = list === 'seeds' || list === 'axes' ? places[list][Number(index)] : undefined;
  return at === undefined ? path : pointer(list!, at, ...rest);
}
