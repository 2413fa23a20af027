import {
  ENDS,
  FINGER_REACH_PX,
  findSides,
  SIDE_NAMES,
  type FoundSides,
  type FrameSide,
  type SideName,
} from './find-sides.ts';
import { lineEnd } from './line-end.ts';
import type { Photo } from '../../picture/raster.ts';
import { photoPoint, type Corners, type PhotoPoint } from '../spaces.ts';

/** The plot frame in the photo: four sides, four corners, and whether lines are darker or lighter than the paper. */
export type SnappedFrame = FoundSides & { readonly corners: Corners };

/**
 * Moves four roughly placed corners onto the printed plot frame, as far as it is printed.
 * @param reach_px how far the corners may be off, photo pixels; less where they were found in the photo than touched
 */
export function snapFrame(photo: Photo, rough: Corners, reach_px: number = FINGER_REACH_PX): SnappedFrame {
  const found = findSides(photo, rough, reach_px);
  return { ...found, corners: cornersOf(photo, found, rough, reach_px) };
}

/** Takes the corners as they are; the printed sides only tell how the page bends between them. */
export function exactFrame(photo: Photo, corners: Corners): SnappedFrame {
  return { ...findSides(photo, corners), corners };
}

/** The same sides with corners that are known better. */
export const withCorners = (frame: SnappedFrame, corners: Corners): SnappedFrame => ({ ...frame, corners });

/** The two sides that meet in each corner. */
const MEETING: readonly (readonly [SideName, SideName])[] = [
  ['bottom', 'left'],
  ['bottom', 'right'],
  ['top', 'right'],
  ['top', 'left'],
];

/** True for a corner that lies on no printed side, or on one only. */
export const isLoose = (frame: SnappedFrame, corner: number): boolean =>
  MEETING[corner]!.some((name) => !frame.sides[name].course);

/** Whether some side of the frame has no line of its own. */
export const hasOpenSide = (frame: SnappedFrame): boolean => SIDE_NAMES.some((name) => !frame.sides[name].course);

/** Corners where the sides meet; beside an open side, the end of the other side's line, or else what was given. */
function cornersOf(photo: Photo, { sides, polarity }: FoundSides, rough: Corners, reach_px: number): Corners {
  return MEETING.map(([a, b], k) => {
    const given = rough[k]!;
    const [closed, open] = sides[a].course ? [a, b] : [b, a];
    if (sides[closed].kind === 'line' && !sides[open].course) {
      const end = lineEnd(photo, sides[closed], polarity, ENDS[closed][1] === k, reach_px);
      if (end) return end;
    }
    return crossing(sides[a], sides[b], given);
  }) as unknown as Corners;
}

function crossing(a: FrameSide, b: FrameSide, near: PhotoPoint): PhotoPoint {
  let [x, y] = near as readonly [number, number];
  for (let i = 0; i < 12; i++) {
    // move to where the offsets from both sides vanish
    const fa = offsetFrom(a, x, y);
    const fb = offsetFrom(b, x, y);
    const det = fa.nx * fb.ny - fa.ny * fb.nx;
    if (Math.abs(det) < 1e-6) break;
    x -= (fa.d * fb.ny - fa.ny * fb.d) / det;
    y -= (fa.nx * fb.d - fa.d * fb.nx) / det;
  }
  return photoPoint(x, y);
}

/** Signed distance of a point from a side, and the direction in which it grows. */
function offsetFrom({ axis, course }: FrameSide, x: number, y: number): { d: number; nx: number; ny: number } {
  const dx = x - axis.start[0];
  const dy = y - axis.start[1];
  const t = dx * axis.along[0] + dy * axis.along[1];
  const s = dx * axis.across[0] + dy * axis.across[1];
  const value = course ? course.value(t) : 0;
  const slope = course ? course.slope(t) : 0;
  return { d: s - value, nx: axis.across[0] - slope * axis.along[0], ny: axis.across[1] - slope * axis.along[1] };
}
