import type { ScaleFit } from './scale-fit.ts';

/** A value at an end of the frame, and how it was come by: `round` where it fell on a value scales end at. */
export type ScaleEnd = {
  readonly value: number;
  readonly isRound: boolean;
  /** share of the scale it was moved by */ readonly moved: number;
};

/**
 * What the scale reads at both sides of the frame. Nearby ticks tell more about an end than far ones (paper is bent);
 * scales mostly end at a multiple of their step, or of a half, a quarter, a fifth or a tenth of it.
 * @param points values with the places of their ticks or labels
 * @param isSharp places are those of ticks, not of labels
 */
export function scaleEnds(
  fit: ScaleFit,
  points: readonly (readonly [place: number, value: number])[],
  isSharp: boolean,
): [ScaleEnd, ScaleEnd] {
  const log = fit.scale === 'log';
  const to = (v: number) => (log ? Math.log(v) : v);
  const at = (end: 0 | 1) =>
    localLine(
      points.map(([p, v]) => [p, to(v)] as const),
      end,
    ) ?? fit.offset + fit.slope * end;
  const [low, high] = [at(0), at(1)];
  const span = high - low;
  return [end(low), end(high)];

  function end(raw: number): ScaleEnd {
    for (const { values, tolerance } of log ? logRungs(raw) : linearRungs(raw, fit.step, span)) {
      let pick: number | null = null;
      for (const v of values) if (pick === null || Math.abs(to(v) - raw) < Math.abs(to(pick) - raw)) pick = v;
      if (pick === null) continue;
      const moved = Math.abs(to(pick) - raw) / span;
      if (moved < (isSharp ? 0.6 : 1) * tolerance) return { value: clean(pick), isRound: true, moved };
    }
    return { value: Number((log ? Math.exp(raw) : raw).toPrecision(4)), isRound: false, moved: 0 };
  }
}

const clean = (v: number) => Number(v.toPrecision(10)) + 0;

type Rung = { values: number[]; tolerance: number };

function linearRungs(raw: number, step: number, span: number): Rung[] {
  return [
    [1, 0.022],
    [2, 0.014],
    [4, 0.008],
    [5, 0.008],
    [10, 0.004],
  ].map(([parts, tolerance]) => {
    const s = step / parts!;
    return { values: [Math.round(raw / s) * s], tolerance: Math.min(tolerance!, (0.3 * s) / span) };
  });
}

function logRungs(raw: number): Rung[] {
  const decade = Math.floor(raw / Math.LN10 + 1e-9);
  const around = (mantissas: readonly number[]) =>
    mantissas.flatMap((m) => [-1, 0, 1].map((d) => m * 10 ** (decade + d)));
  return [
    { values: around([1]), tolerance: 0.016 },
    { values: around([2, 5]), tolerance: 0.013 },
    { values: around([3, 4, 6, 8, 1.5]), tolerance: 0.009 },
    { values: around([7, 9, 2.5, 1.2, 3.5]), tolerance: 0.005 },
  ];
}

/** Weighted straight line through the points, read at an end: weights fall with distance from it. */
function localLine(points: readonly (readonly [number, number])[], end: 0 | 1): number | null {
  if (points.length < 2) return null;
  let [sw, sx, sy, sxx, sxy] = [0, 0, 0, 0, 0];
  for (const [x, y] of points) {
    const w = 1 / (0.2 + Math.abs(x - end)) ** 2;
    sw += w;
    sx += w * x;
    sy += w * y;
    sxx += w * x * x;
    sxy += w * x * y;
  }
  const det = sw * sxx - sx * sx;
  if (det < 1e-12) return null;
  const slope = (sw * sxy - sx * sy) / det;
  return (sy - slope * sx) / sw + slope * end;
}
