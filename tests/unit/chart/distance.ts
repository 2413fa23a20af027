/** Distance of a read curve from the true one, both as fractions of the plot frame. */
export type Match = { rms: number; largest: number; covered: number };

type Xy = readonly [number, number];

/** Root mean square and largest distance of points from a polyline, and how much of its x range they cover. */
export function matchOf(read: readonly Xy[], truth: readonly Xy[]): Match {
  let sum = 0;
  let largest = 0;
  for (const p of read) {
    let nearest = Infinity;
    for (let i = 1; i < truth.length; i++) nearest = Math.min(nearest, distance(p, truth[i - 1]!, truth[i]!));
    sum += nearest ** 2;
    largest = Math.max(largest, nearest);
  }
  const [first, last] = [truth[0]![0], truth.at(-1)![0]];
  const covered = (Math.min(last, read.at(-1)![0]) - Math.max(first, read[0]![0])) / (last - first);
  return { rms: Math.sqrt(sum / read.length), largest, covered };
}

function distance([x, y]: Xy, [ax, ay]: Xy, [bx, by]: Xy): number {
  const dx = bx - ax;
  const dy = by - ay;
  const along = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - ax - along * dx, y - ay - along * dy);
}
