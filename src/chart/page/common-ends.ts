import { acrossAt, lengthOf, slopeAt, type PageLine } from '../../picture/lines/page-lines.ts';

/**
 * Sides of a plot area that are not printed: where the lines that run towards them end.
 * @param lines all level or all upright lines of a web
 * @param beside the lines of the other direction: a side that only one line's end tells of leans as the nearest of them
 * @param change of slope from one line to the next, per pixel (see `pageLean`)
 * @returns lines of the other direction, `strength` and `cover` 0
 */
export function commonEnds(lines: readonly PageLine[], beside: readonly PageLine[], change: number): PageLine[] {
  if (!lines.length) return [];
  const longest = Math.max(...lines.map(lengthOf));
  const long = lines.filter((l) => lengthOf(l) >= 0.4 * longest);
  const model = beside.length ? beside.reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a)) : null;
  return [...endsOf(long, false, model, change), ...endsOf(long, true, model, change)];
}

/** Ends lie on one line when none is further off than this. */
const OFF_PX = 3;

type End = { along: number; across: number; weight: number };

function endsOf(lines: readonly PageLine[], isFar: boolean, model: PageLine | null, change: number): PageLine[] {
  const upright = !lines[0]!.upright;
  // along the side to be: where the line ends across; across it: where it ends along
  const ends: End[] = lines.map((l) => {
    const t = isFar ? l.to : l.from;
    return { along: acrossAt(l, t), across: t, weight: lengthOf(l) };
  });
  const found: PageLine[] = [];
  let left = ends;
  for (let round = 0; round < 2 && left.length >= 2; round++) {
    const best = bestLine(left);
    if (!best) break;
    found.push(asLine(upright, best.inliers, best.slope));
    left = left.filter((e) => !best.inliers.includes(e));
  }
  if (model && (found.length === 0 || lines.length <= 3)) {
    const longest = ends.reduce((a, b) => (b.weight > a.weight ? b : a));
    const slope = slopeAt(model, longest.along) + change * (longest.across - acrossAt(model, longest.along));
    found.push(asLine(upright, [longest], slope));
  }
  return found;
}

/** The line most ends lie on, weighed by the length of what ends there. */
function bestLine(ends: readonly End[]): { inliers: End[]; slope: number } | null {
  let best: { inliers: End[]; slope: number } | null = null;
  let most = 0;
  for (let i = 0; i < ends.length; i++)
    for (let j = i + 1; j < ends.length; j++) {
      const [a, b] = [ends[i]!, ends[j]!];
      const run = b.along - a.along;
      if (Math.abs(run) < 20) continue;
      const slope = (b.across - a.across) / run;
      if (Math.abs(slope) > 0.6) continue;
      const isIn = (e: End) => Math.abs(e.across - a.across - slope * (e.along - a.along)) <= OFF_PX;
      let weight = 0;
      for (const e of ends) if (isIn(e)) weight += e.weight;
      if (weight <= most) continue;
      most = weight;
      best = { inliers: ends.filter(isIn), slope };
    }
  return best;
}

function asLine(upright: boolean, ends: readonly End[], slope: number): PageLine {
  const alongs = ends.map((e) => e.along);
  const from = Math.min(...alongs);
  const to = Math.max(...alongs);
  const middle = (from + to) / 2;
  const across = ends.reduce((s, e) => s + e.across - slope * (e.along - middle), 0) / ends.length;
  return { upright, isDark: true, from, to, middle, c: [across, slope, 0], strength: 0, cover: 0 };
}
