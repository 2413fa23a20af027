export type Point = { x: number; y: number };

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Distance along the line at which each of its corners stands; the last entry is the whole length. */
export function stationsAlong(points: readonly Point[]): number[] {
  const along = [0];
  for (let i = 1; i < points.length; i++) along.push(along[i - 1]! + distance(points[i - 1]!, points[i]!));
  return along;
}

export const lengthOf = (points: readonly Point[]): number => stationsAlong(points).at(-1) ?? 0;

/** Point at a distance along the line, and which way the line runs there (unit vector). */
export function pointAt(points: readonly Point[], distanceAlong: number): { point: Point; direction: Point } {
  const along = stationsAlong(points);
  let i = 1;
  while (i < points.length - 1 && along[i]! < distanceAlong) i++;
  const a = points[i - 1]!;
  const b = points[i] ?? a;
  const span = distance(a, b) || 1;
  const t = Math.min(1, Math.max(0, (distanceAlong - along[i - 1]!) / span));
  return {
    point: { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t },
    direction: { x: (b.x - a.x) / span, y: (b.y - a.y) / span },
  };
}

/** The part of the line between two distances, corners in between kept. */
export function slice(points: readonly Point[], from: number, to: number): Point[] {
  const along = stationsAlong(points);
  const inner = points.filter((_, i) => along[i]! > from + 0.01 && along[i]! < to - 0.01);
  return [pointAt(points, from).point, ...inner, pointAt(points, to).point];
}

/** Moves a cut out of the rounding of a corner, so that no piece ends in the middle of a bend. */
export function clearOfCorners(points: readonly Point[], distanceAlong: number, radius: number): number {
  const along = stationsAlong(points);
  for (let i = 1; i < points.length - 1; i++) {
    const off = distanceAlong - along[i]!;
    if (Math.abs(off) >= radius) continue;
    const before = along[i]! - radius;
    const after = along[i]! + radius;
    const room = { before: before - along[i - 1]!, after: along[i + 1]! - after };
    return (off < 0 && room.before > 0) || room.after <= 0 ? before : after;
  }
  return distanceAlong;
}

const tidy = (n: number): string => String(Math.round(n * 10) / 10);

/** SVG path of the line with its corners rounded; a corner too near to its neighbour gets a smaller radius. */
export function roundedPath(points: readonly Point[], radius: number): string {
  const first = points[0];
  if (!first) return '';
  let d = `M${tidy(first.x)} ${tidy(first.y)}`;
  for (let i = 1; i < points.length; i++) {
    const here = points[i]!;
    const next = points[i + 1];
    if (!next) {
      d += `L${tidy(here.x)} ${tidy(here.y)}`;
      continue;
    }
    const before = points[i - 1]!;
    const r = Math.min(
      radius,
      distance(before, here) / (i === 1 ? 1 : 2),
      distance(here, next) / (i === points.length - 2 ? 1 : 2),
    );
    const start = pointAt([here, before], r).point;
    const end = pointAt([here, next], r).point;
    d += `L${tidy(start.x)} ${tidy(start.y)}Q${tidy(here.x)} ${tidy(here.y)} ${tidy(end.x)} ${tidy(end.y)}`;
  }
  return d;
}
