import type { PhotoPoint, Size } from './view.ts';

/** The corners of the plot frame: bottom-left, bottom-right, top-right, top-left, as the reader wants them. */
export type Corners = readonly [PhotoPoint, PhotoPoint, PhotoPoint, PhotoPoint];
export const CORNER_NAMES = ['bottomLeft', 'bottomRight', 'topRight', 'topLeft'] as const;
export type CornerIndex = 0 | 1 | 2 | 3;

/** Where the corners wait before anybody moved them: an inset frame, well apart from each other and from the edges. */
export function waitingCorners({ width, height }: Size): Corners {
  const [left, right, top, bottom] = [width * 0.16, width * 0.84, height * 0.2, height * 0.8];
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
}

/** The corners with one of them moved, kept inside the photo. */
export function withCorner(corners: Corners, index: CornerIndex, to: PhotoPoint, { width, height }: Size): Corners {
  const kept: PhotoPoint = [Math.min(width, Math.max(0, to[0])), Math.min(height, Math.max(0, to[1]))];
  return corners.map((corner, i) => (i === index ? kept : corner)) as unknown as Corners;
}
