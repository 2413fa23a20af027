import type { Corners } from '../photo/corners.ts';
import type { PhotoWork } from '../photo/photo-work.ts';

/** The corners as a finger left them; a corner counts as placed once it has been moved. */
export const moveCorners =
  (corners: Corners) =>
  (work: PhotoWork): PhotoWork => {
    const moved = (i: 0 | 1 | 2 | 3): boolean =>
      work.placed[i] || corners[i][0] !== work.corners[i][0] || corners[i][1] !== work.corners[i][1];
    return { ...work, corners, placed: [moved(0), moved(1), moved(2), moved(3)] };
  };
