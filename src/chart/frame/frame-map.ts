import { homographyOf, inverseOf, project, type Homography } from '../../picture/homography.ts';
import type { FrameSide, SideName } from './find-sides.ts';
import type { SnappedFrame } from './frame-snap.ts';
import { framePoint, photoPoint, type FramePoint, type PhotoPoint } from '../spaces.ts';

/** The plot frame's fractions (u, v) against photo pixels, both ways. */
export type FrameMap = {
  /** good a little beyond the frame too */
  toPhoto(u: number, v: number): PhotoPoint;
  toFrame(x: number, y: number): FramePoint;
  /** the flat part of the map, and what each side adds to it (dx, dy), for whole rows of pixels */
  readonly homography: Homography;
  readonly bows: Bows;
};

/** Pixels (dx, dy) by which each side leaves the straight line between its corners, at a fraction along it. */
export type Bows = Record<SideName, (fraction: number) => readonly [number, number]>;

const STRAIGHT = () => [0, 0] as const;

/**
 * Flat perspective through the four corners plus a blend of how far the four sides bow out.
 * @returns null where three corners lie on one line
 * Source: S. A. Coons, MIT MAC-TR-41 (1967), bilinearly blended patch, on the residuals of the homography.
 */
export function frameMapOf(frame: SnappedFrame): FrameMap | null {
  const square = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ] as const;
  const homography = homographyOf(square, frame.corners);
  if (!homography) return null;
  const bows: Bows = {
    bottom: bowOf(frame.sides.bottom, (f) => project(homography, f, 0)),
    top: bowOf(frame.sides.top, (f) => project(homography, f, 1)),
    left: bowOf(frame.sides.left, (f) => project(homography, 0, f)),
    right: bowOf(frame.sides.right, (f) => project(homography, 1, f)),
  };
  const back = inverseOf(homography);

  const toPhoto = (u: number, v: number): PhotoPoint => {
    const [x, y] = project(homography, u, v);
    const b = bows.bottom(u);
    const t = bows.top(u);
    const l = bows.left(v);
    const r = bows.right(v);
    return photoPoint(
      x + (1 - v) * b[0] + v * t[0] + (1 - u) * l[0] + u * r[0],
      y + (1 - v) * b[1] + v * t[1] + (1 - u) * l[1] + u * r[1],
    );
  };
  const toFrame = (x: number, y: number): FramePoint => {
    // the bows change slowly, so going back and forth settles in a few steps
    let ax = x;
    let ay = y;
    let at = project(back, x, y);
    for (let i = 0; i < 20; i++) {
      const [px, py] = toPhoto(at[0], at[1]);
      const ex = x - px;
      const ey = y - py;
      if (Math.abs(ex) + Math.abs(ey) < 1e-4) break;
      ax += ex;
      ay += ey;
      at = project(back, ax, ay);
    }
    return framePoint(at[0], at[1]);
  };
  return { toPhoto, toFrame, homography, bows };
}

/** Distance from the chord's point to the printed line, across the side; the corners themselves have none. */
function bowOf({ axis, course }: FrameSide, onChord: (fraction: number) => readonly [number, number]): Bows[SideName] {
  if (!course) return STRAIGHT;
  const from = onChord(0);
  const to = onChord(1);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const nx = -(to[1] - from[1]) / length;
  const ny = (to[0] - from[0]) / length;
  const offset = (fraction: number) => {
    const [x, y] = onChord(fraction);
    // where the normal through the chord's point meets the line: the strip and the chord are nearly parallel
    let e = 0;
    for (let i = 0; i < 3; i++) {
      const dx = x + nx * e - axis.start[0];
      const dy = y + ny * e - axis.start[1];
      const t = dx * axis.along[0] + dy * axis.along[1];
      const s = dx * axis.across[0] + dy * axis.across[1];
      e -= (s - course.value(t)) / (nx * axis.across[0] + ny * axis.across[1]);
    }
    return e;
  };
  // corners that were given as exact need not lie on the line: only its shape counts then
  const atStart = offset(0);
  const atEnd = offset(1);
  return (fraction) => {
    const f = Math.min(1.05, Math.max(-0.05, fraction));
    const e = offset(f) - (1 - f) * atStart - f * atEnd;
    return [nx * e, ny * e];
  };
}
