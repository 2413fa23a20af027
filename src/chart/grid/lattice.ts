import { fractionAt, type AxisScale } from '../axes.ts';
import { choleskyFactor, solveLower, solveUpper } from '../../numeric/cholesky.ts';

/** A line whose true place on the axis is known, because grid lines stand at round values. */
export type Anchored = { readonly index: number; readonly seen: number; readonly truth: number };

export type Lattice = {
  /** the lines that fell on round values; `index` into what was given */
  readonly anchored: readonly Anchored[];
  /** share of the round values between the frame's sides that had a line */
  readonly filled: number;
  /** share of the lines' strength that was explained */
  readonly explained: number;
  /** distance between neighbouring round values, fraction of the axis (log: the smallest) */
  readonly spacing: number;
  /** root mean square of what the smooth bend left, fraction of the axis */
  readonly residual: number;
};

type Line = { readonly at: number; readonly strength: number };

/**
 * Which round values the grid lines (or ticks) of one axis stand for.
 * Lines are drawn at even steps of 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 6.25, 7.5 or 8 × 10ⁿ, or at 1..9 × 10ⁿ on a log axis; where the
 * frame's sides are no round values, the steps still count from zero. A bent page shifts lines smoothly, and not at
 * the frame's sides. Coarse steps are tried first; what they show of the bend helps to tell finer ones apart.
 * @param lines places as fractions of the axis, with strengths
 * @param smallest steps finer than this fraction of the axis are not looked for
 * @param free ends of the axis where the frame's side was not found: the scale may begin or end elsewhere there
 * @returns null where no round steps fit
 */
export function fitLattice(
  lines: readonly Line[],
  axis: AxisScale,
  smallest: number,
  free: FreeEnds = NONE_FREE,
): Lattice | null {
  const candidates = axis.scale === 'log' ? logLattices(axis, smallest) : linearLattices(axis, smallest);
  return bestFit(lines, candidates, free);
}

/**
 * Grid lines that divide the frame evenly from side to side, whatever their values: still a ruler for a bent page.
 * @returns null where they don't
 */
export function fitEvenSteps(lines: readonly Line[], smallest: number): Lattice | null {
  const most = Math.min(MOST_EVEN_STEPS, Math.floor(1 / smallest));
  const candidates: number[][] = [];
  for (let n = 3; n <= most; n++) candidates.push(Array.from({ length: n + 1 }, (_, k) => k / n));
  return lines.length < 2 ? null : bestFit(lines, candidates, NONE_FREE);
}

const MOST_EVEN_STEPS = 60;

function bestFit(lines: readonly Line[], candidates: readonly number[][], free: FreeEnds): Lattice | null {
  if (!lines.length) return null;
  const strongest = [...lines].sort((a, b) => b.strength - a.strength)[Math.floor(lines.length * 0.1)]!.strength;
  const strong = lines.map((l, index) => ({ ...l, index })).filter((l) => l.strength >= 0.6 * strongest);
  const all = lines.map((l, index) => ({ ...l, index }));
  let best: { lattice: Lattice; score: number; bend: Bend } | null = null;
  let plain: Lattice | null = null;
  for (const set of strong.length < all.length ? [strong, all] : [all]) {
    if (set === all && best && best.lattice.anchored.length > 2) plain = best.lattice;
    for (const places of candidates)
      for (const start of best ? [[], best.bend] : [[]]) {
        const fit = match(set, places, start, all, free);
        if (!fit) continue;
        const { lattice, bend } = fit;
        // finer lines must leave the strong ones at the values they were found to have
        if (set === all && plain && contradicts(lattice, plain)) continue;
        const moved = Math.max(...lattice.anchored.map((a) => Math.abs(a.seen - a.truth)));
        const score =
          lattice.explained * Math.min(1, lattice.filled * 1.15) -
          0.0005 * places.length -
          6 * moved -
          50 * lattice.residual;
        if (!best || score > best.score + 0.02) best = { lattice, score, bend };
      }
  }
  return best && isBelievable(best.lattice, free) ? best.lattice : null;
}

/**
 * Places that fit by chance leave gaps and scatter; round values hardly do, whatever the page's bend. And paper that
 * lies flat enough to be photographed does not shift them far: a scale that needs more is the wrong scale.
 */
function isBelievable({ anchored, explained, filled, residual }: Lattice, free: FreeEnds): boolean {
  const moved = Math.max(...anchored.map((a) => Math.abs(a.seen - a.truth)));
  const most = free.low || free.high ? FARTHEST_SHIFT_OPEN : FARTHEST_SHIFT;
  return explained > 0.5 && explained * Math.min(1, filled) > 0.5 && residual < 0.002 && moved < most;
}

/** Strong curl seen at 25° shifts a line by two hundredths of the axis; an open side is only a finger's guess. */
const FARTHEST_SHIFT = 0.035;
const FARTHEST_SHIFT_OPEN = 0.065;

/** Whether two lattices give the same line different values. */
const contradicts = (a: Lattice, b: Lattice): boolean =>
  b.anchored.some(({ index, truth }) => a.anchored.some((o) => o.index === index && Math.abs(o.truth - truth) > 1e-6));

/** Ends of an axis that are not held by a side of the frame. */
export type FreeEnds = { readonly low: boolean; readonly high: boolean };
export const NONE_FREE: FreeEnds = { low: false, high: false };

/** Coefficients of what the page's bend adds to a place: a shift at each free end, then u(1−u)·(b0 + b1(2u−1) + …). */
type Bend = readonly number[];

function bendBasis(u: number, order: number, free: FreeEnds): number[] {
  const out: number[] = [];
  if (free.high) out.push(u);
  if (free.low) out.push(1 - u);
  const w = 2 * u - 1;
  for (let k = 0, p = u * (1 - u); k < order; k++, p *= w) out.push(p);
  return out;
}

function bent(u: number, bend: Bend, free: FreeEnds): number {
  const shifts = Number(free.low) + Number(free.high);
  return bendBasis(u, Math.max(0, bend.length - shifts), free).reduce((s, b, k) => s + b * (bend[k] ?? 0), u);
}

function match(
  set: readonly (Line & { index: number })[],
  places: readonly number[],
  start: Bend,
  all: readonly (Line & { index: number })[],
  free: FreeEnds,
): { lattice: Lattice; bend: Bend } | null {
  const spacing = smallestGap(places);
  const tolerance = Math.min(0.2 * spacing, 0.012);
  let bend = start;
  let pairs: Anchored[] = [];
  for (let round = 0; round < 5; round++) {
    const reach =
      round === 0 && !start.length
        ? Math.min(0.33 * spacing, free.low || free.high ? 0.05 : 0.03)
        : Math.max(tolerance, (0.3 - 0.05 * round) * Math.min(spacing, 0.04));
    pairs = nearest(set, places, bend, reach, free);
    if (!pairs.length) return null;
    bend = fitBend(pairs, Math.min(4, Math.ceil(pairs.length / 2)), free);
  }
  pairs = nearest(all, places, bend, tolerance, free);
  if (!pairs.length) return null;
  const residual = Math.sqrt(pairs.reduce((s, p) => s + (bent(p.seen, bend, free) - p.truth) ** 2, 0) / pairs.length);
  const total = all.reduce((s, l) => s + l.strength, 0);
  const explained = pairs.reduce((s, p) => s + all[p.index]!.strength, 0) / total;
  const interior = places.filter((p) => p > 0.012 && p < 0.988).length;
  const filled = interior ? pairs.length / interior : 0;
  // places that fit by chance scatter over the tolerance; real ones lie well inside it
  // with an open end one or two lines fit anything
  if (filled < 0.5 || residual > 0.5 * tolerance || pairs.length < 1 + 2 * (Number(free.low) + Number(free.high)))
    return null;
  return { lattice: { anchored: pairs, filled, explained, spacing, residual }, bend };
}

/** Each place takes the nearest line within reach, strongest claims first. */
function nearest(
  set: readonly (Line & { index: number })[],
  places: readonly number[],
  bend: Bend,
  reach: number,
  free: FreeEnds,
): Anchored[] {
  const pairs: Anchored[] = [];
  for (const truth of places) {
    if (truth < (free.low ? -0.02 : 0.006) || truth > (free.high ? 1.02 : 0.994)) continue;
    let pick: (Line & { index: number }) | null = null;
    let least = reach;
    for (const l of set) {
      const d = Math.abs(bent(l.at, bend, free) - truth);
      if (d < least) {
        least = d;
        pick = l;
      }
    }
    if (pick) pairs.push({ index: pick.index, seen: pick.at, truth });
  }
  return pairs;
}

function fitBend(pairs: readonly Anchored[], bends: number, free: FreeEnds): Bend {
  const order = bends + Number(free.low) + Number(free.high);
  const a = new Float64Array(order * order);
  const b = new Float64Array(order);
  for (const { seen, truth } of pairs) {
    const basis = bendBasis(seen, bends, free);
    for (let i = 0; i < order; i++) {
      b[i]! += basis[i]! * (truth - seen);
      for (let j = 0; j < order; j++) a[i * order + j]! += basis[i]! * basis[j]!;
    }
  }
  for (let i = 0; i < order; i++) a[i * order + i]! += 1e-4;
  const l = choleskyFactor(a, order);
  return l ? Array.from(solveUpper(l, order, solveLower(l, order, b))) : [];
}

const STEPS = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 6.25, 7.5, 8];

/** Places of even round steps, coarse to fine. */
function linearLattices(axis: AxisScale, smallest: number): number[][] {
  const span = Math.abs(axis.max - axis.min);
  const low = Math.min(axis.min, axis.max);
  const out: number[][] = [];
  const seen = new Set<string>();
  for (let n = Math.ceil(Math.log10(span)); n > Math.log10(span * smallest) - 1; n--)
    for (const m of STEPS.toReversed()) {
      const step = m * 10 ** n;
      if (step > 0.55 * span || step < smallest * span) continue;
      const places: number[] = [];
      for (let k = Math.ceil(low / step - 1e-6); k * step <= low + span * (1 + 1e-9); k++)
        places.push(fractionAt(axis, k * step));
      const key = places.map((p) => p.toFixed(5)).join();
      if (places.length < 1 || seen.has(key)) continue;
      seen.add(key);
      out.push(places.sort((a, b) => a - b));
    }
  return out.sort((a, b) => a.length - b.length);
}

/** Places of 1, then 1-2-5, then 1..9 in every decade, then half steps below 5 too. */
function logLattices(axis: AxisScale, smallest: number): number[][] {
  const sets = [
    [1],
    [1, 2, 5],
    [1, 2, 3, 5],
    [1, 2, 3, 4, 5, 6, 7, 8, 9],
    [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9],
  ];
  return sets
    .map((set) => {
      const places: number[] = [];
      for (let n = Math.floor(Math.log10(axis.min)); n <= Math.ceil(Math.log10(axis.max)); n++)
        for (const m of set) {
          const p = fractionAt(axis, m * 10 ** n);
          if (p > -1e-6 && p < 1 + 1e-6) places.push(p);
        }
      return places;
    })
    .filter((places) => places.length > 0 && smallestGap(places) >= smallest);
}

function smallestGap(places: readonly number[]): number {
  let gap = places[0] === undefined ? 1 : Math.max(places[0], 1 - places.at(-1)!, 0.2);
  for (let i = 1; i < places.length; i++) gap = Math.min(gap, places[i]! - places[i - 1]!);
  return gap;
}
