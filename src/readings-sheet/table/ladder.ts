import { acrossAt, lengthOf, type PageLine } from '../../picture/lines/page-lines.ts';
import type { Xy } from './lattice.ts';

/** An end lies on a side when it is no further off than this share of a usual rung: rungs drawn by hand end so unevenly. */
const REACH = 0.03;
/** Two ends make any line; three that lie on one are a side. */
const FEWEST_ENDS = 3;

/** A straight side through the ends of rungs: along = at + lean · across. */
type Side = { readonly at: number; readonly lean: number };

/**
 * Where the rungs of a ladder meet its two sides, rung by rung. The sides go through most rungs' ends; a rung that ends on
 * neither, an edge of the paper or a fold, is left out.
 */
export function ladderNodes(rungs: readonly PageLine[]): (readonly [Xy, Xy])[] {
  const usual = rungs.map(lengthOf).toSorted((a, b) => a - b)[rungs.length >> 1]!;
  const reach = REACH * usual;
  const from = sideThrough(
    endsOf(rungs, (rung) => rung.from),
    reach,
  );
  const to = sideThrough(
    endsOf(rungs, (rung) => rung.to),
    reach,
  );
  const kept = rungs.filter((rung) => isOn(rung, rung.from, from, reach) || isOn(rung, rung.to, to, reach));
  return kept.map((rung) => [meeting(rung, from), meeting(rung, to)]);
}

/** Ends as [across, along]. */
const endsOf = (rungs: readonly PageLine[], end: (rung: PageLine) => number): Xy[] =>
  rungs.map((rung) => [acrossAt(rung, end(rung)), end(rung)]);

const isOn = (rung: PageLine, end: number, { at, lean }: Side, reach: number): boolean =>
  Math.abs(end - at - lean * acrossAt(rung, end)) <= reach;

/**
 * The line most ends lie on, the steepest lean half a right angle. Where no three do it is level with the middle end.
 * Source: M. Fischler, R. Bolles, Random sample consensus, Comm. ACM 24 (1981) 381; here all pairs are tried.
 */
function sideThrough(ends: readonly Xy[], reach: number): Side {
  let best: { own: readonly Xy[]; off: number } | null = null;
  ends.forEach((a, i) =>
    ends.slice(i + 1).forEach((b) => {
      if (Math.abs(b[0] - a[0]) < reach) return;
      const lean = (b[1] - a[1]) / (b[0] - a[0]);
      if (Math.abs(lean) > 1) return;
      const offs = ends.map(([across, along]) => Math.abs(along - a[1] - lean * (across - a[0])));
      const own = ends.filter((_, k) => offs[k]! <= reach);
      const off = offs.reduce((sum, v) => sum + Math.min(v, reach), 0);
      if (own.length >= FEWEST_ENDS && (!best || off < best.off)) best = { own, off };
    }),
  );
  if (!best) return { at: ends.map(([, along]) => along).toSorted((a, b) => a - b)[ends.length >> 1]!, lean: 0 };
  return leastSquares((best as { own: readonly Xy[] }).own);
}

function leastSquares(points: readonly Xy[]): Side {
  const mean = (k: 0 | 1) => points.reduce((sum, p) => sum + p[k], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const squares = points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  const lean = squares > 0 ? points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / squares : 0;
  return { at: my - lean * mx, lean };
}

/** Where a rung, carried on, meets a side: a place of the view. */
function meeting(rung: PageLine, { at, lean }: Side): Xy {
  let along = at + lean * rung.c[0];
  for (let round = 0; round < 4; round++) along = at + lean * acrossAt(rung, along);
  const across = acrossAt(rung, along);
  return rung.upright ? [across, along] : [along, across];
}
