import { homographyOf, project } from '../picture/homography.ts';
import type { Photo } from '../picture/raster.ts';
import type { Surface } from './surface.ts';

type Xy = readonly [number, number];

/** Four corners in the photo, from the top left clockwise as one reads it, and sides that may be curved. */
export type Outline = {
  readonly corners: readonly [Xy, Xy, Xy, Xy];
  /** how far the middles of the top, right, bottom and left side bulge outwards, photo pixels; 0 for straight ones */
  readonly bulges: readonly [number, number, number, number];
};

const LONGEST_SIDE_PX = 1400;
/** More enlargement shows nothing new. */
const MOST_ENLARGED = 2.2;

const distance = (a: Xy, b: Xy) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/**
 * Lays what lies within an outline flat.
 * @param margin_px so much of what lies around is shown too, flat pixels
 * @returns null where the corners are no quadrilateral
 * Source of the curved sides: S. A. Coons, MIT Project MAC-TR-41 (1967); here the sides' bulges are blended and added
 * to the projective map of the corners.
 */
export function layFlat(photo: Photo, { corners, bulges }: Outline, margin_px = 0): Surface | null {
  const [a, b, c, d] = corners;
  const across = (distance(a, b) + distance(d, c)) / 2;
  const down = (distance(a, d) + distance(b, c)) / 2;
  const scale = Math.min(MOST_ENLARGED, LONGEST_SIDE_PX / Math.max(across, down));
  const width = Math.max(32, Math.round(across * scale));
  const height = Math.max(32, Math.round(down * scale));
  const flat: Xy[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  const h = homographyOf(flat, corners);
  if (!h) return null;
  const outward = corners.map((p, i): Xy => {
    const q = corners[(i + 1) % 4]!;
    const l = distance(p, q) || 1;
    return [((q[1] - p[1]) / l) * bulges[i]!, (-(q[0] - p[0]) / l) * bulges[i]!];
  });
  const isCurved = bulges.some((bulge) => bulge !== 0);
  const toPhoto = (x: number, y: number): Xy => {
    const [px, py] = project(h, x, y);
    if (!isCurved) return [px, py];
    const [u, v] = [x / width, y / height];
    const [bu, bv] = [4 * u * (1 - u), 4 * v * (1 - v)];
    const shares = [bu * (1 - v), bv * u, bu * v, bv * (1 - u)];
    let [dx, dy] = [0, 0];
    shares.forEach((share, i) => {
      dx += share * outward[i]![0];
      dy += share * outward[i]![1];
    });
    return [px + dx, py + dy];
  };
  return {
    width: width + 2 * margin_px,
    height: height + 2 * margin_px,
    photo,
    photoPixels: 1 / scale,
    toPhoto: (x, y) => toPhoto(x - margin_px, y - margin_px),
  };
}

/** The same surface read from another side. @param turns quarter turns against the clock the picture is turned by */
export function turned(surface: Surface, turns: 0 | 1 | 2 | 3): Surface {
  const { width: w, height: h } = surface;
  if (turns === 0) return surface;
  const back: ((x: number, y: number) => Xy)[] = [
    (x, y) => [x, y],
    (x, y) => [w - y, x],
    (x, y) => [w - x, h - y],
    (x, y) => [y, h - x],
  ];
  const [width, height] = turns === 2 ? [w, h] : [h, w];
  return { ...surface, width, height, toPhoto: (x, y) => surface.toPhoto(...back[turns]!(x, y)) };
}
