import { shapePreservingCubic } from '../../src/numeric/interpolate.ts';
import type { Curve } from './plot-model.ts';

/** Points of a drawn curve: one every few px is enough for the eye. */
const DRAWN = 61;

function resampled({ x, y }: Curve, from: (y: number) => number, to: (value: number) => number): Curve {
  const points = x.map((at, i) => [at, from(y[i]!)] as const).filter(([at], i) => i === 0 || at > x[i - 1]!);
  if (points.length < 2 || points.length >= DRAWN) return { x, y };
  const curve = shapePreservingCubic(points);
  const xs = Array.from({ length: DRAWN }, (_, i) => curve.min + ((curve.max - curve.min) * i) / (DRAWN - 1));
  return { x: xs, y: xs.map((at) => to(curve.value(at))) };
}

/** A curve of few points drawn through them without corners and without inventing humps. */
export const smooth = (curve: Curve): Curve =>
  resampled(
    curve,
    (y) => y,
    (value) => value,
  );

/** The same for what ducts ask, which grows about as the square of the flow: straight in its root. */
export const smoothSquare = (curve: Curve): Curve =>
  resampled(
    curve,
    (y) => Math.sqrt(Math.max(0, y)),
    (root) => Math.max(0, root) ** 2,
  );
