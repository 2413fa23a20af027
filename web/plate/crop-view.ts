import type { PhotoPoint } from '../photo/view.ts';

/** A piece of the photo to be shown upright: turned by `turn_deg` about its middle, then cut. Photo pixels. */
export type CropView = {
  readonly middle: PhotoPoint;
  readonly width: number;
  readonly height: number;
  readonly turn_deg: number;
};

/** Shown round the box, so that a cut figure is seen to be cut: share of its height. */
const ROOM = 0.35;

/** The turn that brings a plate's own lines level [°]. @param corners from the top left clockwise as one reads it; fewer than four: none */
export function turnOf(corners: readonly PhotoPoint[]): number {
  const [a, b, c, d] = corners;
  if (!a || !b || !c || !d) return 0;
  const along = [b[0] - a[0] + c[0] - d[0], b[1] - a[1] + c[1] - d[1]] as const;
  return (-Math.atan2(along[1], along[0]) * 180) / Math.PI;
}

/** How a box is cut from the photo so that its print stands upright. A plate photographed on its side has boxes on their side. */
export function cropOf(
  [x, y, width, height]: readonly [number, number, number, number],
  turn_deg: number,
  roomAround = ROOM,
): CropView {
  const isOnItsSide = Math.abs(Math.sin((turn_deg * Math.PI) / 180)) > Math.SQRT1_2;
  const [along, across] = isOnItsSide ? [height, width] : [width, height];
  const room = roomAround * Math.min(along, across);
  return { middle: [x + width / 2, y + height / 2], width: along + 2 * room, height: across + 2 * room, turn_deg };
}
