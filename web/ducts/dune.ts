import type { PlacedPipe } from './layout.ts';

/** Dust lying on the floor of the longest level stretch of a pipe: outline of the heap and the grains in it; null where the pipe only climbs. */
export function dune(pipe: PlacedPipe): { outline: string; grains: { x: number; y: number }[] } | null {
  const level = pipe.points
    .slice(1)
    .map((to, i) => ({ from: pipe.points[i]!, to }))
    .filter(({ from, to }) => Math.abs(from.y - to.y) < 1)
    .map(({ from, to }) => ({ left: Math.min(from.x, to.x) + 8, right: Math.max(from.x, to.x) - 8, y: from.y }))
    .sort((a, b) => b.right - b.left - (a.right - a.left))[0];
  if (!level || level.right - level.left < 14) return null;
  const floor = level.y + pipe.width / 2;
  const span = level.right - level.left;
  const height = (t: number) =>
    pipe.width * 0.3 * Math.sin(Math.PI * t) ** 0.6 * (0.72 + 0.28 * Math.sin(t * span * 0.13));
  const steps = Math.max(6, Math.round(span / 3));
  let outline = `M${level.left.toFixed(1)} ${floor.toFixed(1)}`;
  for (let i = 0; i <= steps; i++)
    outline += `L${(level.left + (span * i) / steps).toFixed(1)} ${(floor - height(i / steps)).toFixed(1)}`;
  const grains = Array.from({ length: Math.min(60, Math.round(span / 2)) }, (_, i) => {
    const t = (i * 0.618034 + 0.05) % 1;
    return { x: level.left + span * t, y: floor - 1.4 - height(t) * 0.75 * ((i * 0.7548777) % 1) };
  });
  return { outline: `${outline}L${level.right.toFixed(1)} ${floor.toFixed(1)}Z`, grains };
}
