type Xy = readonly [number, number];

/** Whether a place lies within a quadrilateral, its corners in order round it. */
export function isWithin(corners: readonly Xy[], [x, y]: Xy): boolean {
  const side = (a: Xy, b: Xy): number => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
  const sides = corners.map((corner, i) => side(corner, corners[(i + 1) % corners.length]!));
  return sides.every((s) => s > 0) || sides.every((s) => s < 0);
}
