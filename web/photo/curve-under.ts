import type { ChartCurve } from '../api.ts';
import type { PhotoPoint } from './view.ts';

/** A finger on a curve that was already followed is this near to it, as a share of the photo's longer side. */
const NEAR = 0.006;

/** Which of the curves a place on the photo lies on; -1 where none is near. @param side_px the photo's longer side */
export function curveUnder(curves: readonly ChartCurve[], at: PhotoPoint, side_px: number): number {
  const distances = curves.map(({ points_px }) =>
    points_px.slice(1).reduce((least, to, i) => Math.min(least, fromStretch(at, points_px[i]!, to)), Infinity),
  );
  const least = Math.min(Infinity, ...distances);
  return least < NEAR * side_px ? distances.indexOf(least) : -1;
}

function fromStretch([x, y]: PhotoPoint, [x0, y0]: PhotoPoint, [x1, y1]: PhotoPoint): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const along = Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - x0 - along * dx, y - y0 - along * dy);
}
