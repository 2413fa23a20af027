import { commonEnds } from './common-ends.ts';
import { crossing, type LineWeb } from '../../picture/lines/line-webs.ts';
import type { Lean } from './page-lean.ts';
import { acrossAt, lengthOf, type PageLine } from '../../picture/lines/page-lines.ts';
import { candidatesOf, coverOf, gapsOf, signsAt, type Candidate, type SideSigns } from './web-table.ts';

type Xy = readonly [number, number];

/** Four lines of a web that may frame a plot; places in view pixels. */
export type WebFrame = {
  /** bottom-left, bottom-right, top-right, top-left as seen */
  readonly corners: readonly [Xy, Xy, Xy, Xy];
  readonly bottom: SideSigns;
  readonly right: SideSigns;
  readonly top: SideSigns;
  readonly left: SideSigns;
  /** 0..1, how well its sides hold */
  readonly hold: number;
};

/** The four sides, in the order of the corners they begin at. */
export const sidesOf = (f: WebFrame): readonly SideSigns[] => [f.bottom, f.right, f.top, f.left];

const MOST_CANDIDATES = 14;
const LEAST_SIDE_SHARE = 0.09;
const KEPT_A_WEB = 8;
/** Lines of one direction only tell less than a grid. */
const LADDER_WORTH = 0.85;
/** A side counts as printed from this share of its length. */
const PRINTED_SHARE = 0.55;

/**
 * The likeliest frames in a web of lines, best first: large, their sides printed along their length or at least the
 * common end of the lines between, and nothing running on beyond them.
 * @param all every line of the same polarity, in the order they begin
 * @param edgeNear the edge of a tinted panel near where the lines of a grid end
 */
export function webFrames(
  web: LineWeb,
  all: readonly PageLine[],
  lean: Lean,
  longEdge: number,
  edgeNear: (end: PageLine) => PageLine | null,
): WebFrame[] {
  const sides = (own: readonly PageLine[], across: readonly PageLine[], change: number): Candidate[] => {
    const ends = commonEnds(across, own, change);
    const edges = ends.flatMap((end) => edgeNear(end) ?? []);
    return candidatesOf(likelySides(own, [...edges, ...ends]), web, [...all, ...edges]);
  };
  const uprights = sides(web.upright, web.level, lean.upright);
  const levels = sides(web.level, web.upright, lean.level);
  const least = LEAST_SIDE_SHARE * longEdge;
  const known = web.upright.length && web.level.length ? 1 : LADDER_WORTH;
  const corner = uprights.map((u) => levels.map((l) => crossing(u.line, l.line)));
  const found: WebFrame[] = [];
  for (let a = 0; a < uprights.length; a++)
    for (let b = 0; b < uprights.length; b++) {
      if (uprights[b]!.line.c[0] - uprights[a]!.line.c[0] < least / 2) continue;
      for (let c = 0; c < levels.length; c++)
        for (let d = 0; d < levels.length; d++) {
          if (levels[d]!.line.c[0] - levels[c]!.line.c[0] < least / 2) continue;
          const [bl, br, tr, tl] = [corner[a]![d], corner[b]![d], corner[b]![c], corner[a]![c]];
          if (!bl || !br || !tr || !tl || !isRectangle([bl, br, tr, tl], least)) continue;
          const frame = frameOf(uprights[a]!, uprights[b]!, levels[c]!, levels[d]!, [bl, br, tr, tl]);
          if (frame) found.push({ ...frame, hold: known * frame.hold });
        }
    }
  found.sort((a, b) => worth(b) - worth(a));
  const kept: WebFrame[] = [];
  for (const f of found) {
    if (kept.every((k) => !isAlike(k, f))) kept.push(f);
    if (kept.length >= KEPT_A_WEB) break;
  }
  return kept;
}

const worth = (f: WebFrame) => f.hold * areaOf(f.corners) ** 0.25;

/** The longest and strongest lines, the outermost of the long ones, and the sides that only ends tell of. */
function likelySides(lines: readonly PageLine[], ends: readonly PageLine[]): PageLine[] {
  if (!lines.length) return [...ends];
  const weight = (l: PageLine) => lengthOf(l) * l.cover * Math.sqrt(l.strength);
  const heaviest = lines.toSorted((a, b) => weight(b) - weight(a));
  const most = weight(heaviest[0]!);
  const long = heaviest.filter((l) => weight(l) >= 0.35 * most).toSorted((a, b) => a.c[0] - b.c[0]);
  const picked = new Set([...long.slice(0, 3), ...long.slice(-3)]);
  for (const l of heaviest) if (picked.size < MOST_CANDIDATES) picked.add(l);
  const real = [...picked];
  return [...real, ...ends.filter((e) => !real.some((l) => isSame(l, e)))];
}

/** Ticks reach beyond a printed side by this share of its length; where they end is no other side. */
const TICK_SHARE = 0.014;

function isSame(a: PageLine, b: PageLine): boolean {
  const from = Math.max(a.from, b.from);
  const to = Math.min(a.to, b.to);
  const off = Math.abs(acrossAt(a, from) - acrossAt(b, from)) + Math.abs(acrossAt(a, to) - acrossAt(b, to));
  return to - from > 0.5 * lengthOf(b) && off < 6 + 2 * TICK_SHARE * lengthOf(b);
}

/** A rectangle tilted by 25° is foreshortened and skewed by no more than this. */
const MOST_TAPER = 1.45;
const MOST_SKEW = 0.42;

function isRectangle([bl, br, tr, tl]: readonly [Xy, Xy, Xy, Xy], least: number): boolean {
  const [bx, by, rx, ry] = [br[0] - bl[0], br[1] - bl[1], tr[0] - br[0], br[1] - tr[1]];
  const [tx, ty, lx, ly] = [tr[0] - tl[0], tr[1] - tl[1], tl[0] - bl[0], bl[1] - tl[1]];
  if (bx < least || tx < least || ry < least || ly < least) return false;
  const [wide, narrow] = [Math.max(bx, tx), Math.min(bx, tx)];
  const [high, low] = [Math.max(ry, ly), Math.min(ry, ly)];
  if (wide > MOST_TAPER * narrow || high > MOST_TAPER * low) return false;
  // skew: how far from square the middle lines cross
  const [mx, my] = [bx + tx, by + ty];
  const [nx, ny] = [rx + lx, -(ry + ly)];
  return Math.abs(mx * nx + my * ny) < MOST_SKEW * Math.hypot(mx, my) * Math.hypot(nx, ny);
}

function frameOf(
  left: Candidate,
  right: Candidate,
  top: Candidate,
  bottom: Candidate,
  corners: readonly [Xy, Xy, Xy, Xy],
): WebFrame | null {
  const [bl, br, tr, tl] = corners;
  // the cheap half first: most candidates fall here
  const b = coverOf(bottom, bl[0], br[0]);
  const t = coverOf(top, tl[0], tr[0]);
  const r = coverOf(right, tr[1], br[1]);
  const l = coverOf(left, tl[1], bl[1]);
  const printed = [b, t, r, l].filter((c) => c > PRINTED_SHARE).length;
  if (isBrokenAcross(left, right, [tl[1], bl[1]], [tr[1], br[1]])) return null;
  if (isBrokenAcross(bottom, top, [bl[0], br[0]], [tl[0], tr[0]])) return null;
  const frame = {
    corners,
    bottom: signsAt(bottom, top, bl[0], br[0], true, b),
    right: signsAt(right, left, tr[1], br[1], true, r),
    top: signsAt(top, bottom, tl[0], tr[0], false, t),
    left: signsAt(left, right, tl[1], bl[1], false, l),
  };
  // on a tinted panel no side need be printed, but then the whole grid ends there
  if (printed < 2 && !sidesOf({ ...frame, hold: 0 }).every((s) => s.cover > PRINTED_SHARE || isGridEnd(s))) return null;
  const hold = [frame.bottom, frame.right, frame.top, frame.left].reduce((p, s) => p * sideHold(s), 1) ** 0.25;
  return { ...frame, hold };
}

const isGridEnd = (s: SideSigns) => s.enders >= 2 && s.ends > 0.6;

/** Whether two opposite sides are both interrupted at the same place: what looks like one frame is two panels. */
function isBrokenAcross(a: Candidate, b: Candidate, [a0, a1]: Span, [b0, b1]: Span): boolean {
  const gaps = gapsOf(b, b0, b1);
  return gapsOf(a, a0, a1).some(([from, to]) =>
    gaps.some((g) => Math.abs(g[0] - from) < 0.02 && Math.abs(g[1] - to) < 0.02),
  );
}

type Span = readonly [number, number];

/**
 * How well a side holds, 0..1: a printed one by its line, one that is not by all lines ending there. Where a grid runs
 * on through a line much stronger than itself, that may still be the border between two panels.
 */
export function sideHold({ cover, ends, passes, standsOut, enders }: SideSigns): number {
  const closed = standsOut ? Math.max(ends, 0.6 * passes) : ends;
  const worth = cover > 0 ? 0.55 - 0.15 * cover : enders >= 3 ? 0.55 : 0.41;
  return Math.max(0.02, 0.6 * cover + worth * closed - (standsOut ? 0.4 : 0.7) * passes);
}

/** Area of a polygon, view pixels squared. */
export function areaOf(corners: readonly Xy[]): number {
  let twice = 0;
  corners.forEach(([x, y], k) => {
    const [nx, ny] = corners[(k + 1) % corners.length]!;
    twice += x * ny - nx * y;
  });
  return Math.abs(twice) / 2;
}

/** Share of the smaller of two frames that lies in the other, by a grid of points. */
export function overlap(a: readonly Xy[], b: readonly Xy[]): number {
  const [small, big] = areaOf(a) <= areaOf(b) ? [a, b] : [b, a];
  let inside = 0;
  for (let i = 1; i < 10; i++)
    for (let j = 1; j < 10; j++) {
      const [u, v] = [i / 10, j / 10];
      const mix = (k: 0 | 1) =>
        (1 - v) * ((1 - u) * small[0]![k] + u * small[1]![k]) + v * ((1 - u) * small[3]![k] + u * small[2]![k]);
      if (isInside(big, mix(0), mix(1))) inside++;
    }
  return inside / 81;
}

function isInside(corners: readonly Xy[], x: number, y: number): boolean {
  return corners.every(([ax, ay], k) => {
    const [bx, by] = corners[(k + 1) % corners.length]!;
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) <= 0;
  });
}

/** Corners nearly in the same places. */
export function isAlike(a: { corners: readonly Xy[] }, b: { corners: readonly Xy[] }): boolean {
  const size = Math.sqrt(Math.min(areaOf(a.corners), areaOf(b.corners)));
  return a.corners.every(([x, y], k) => Math.hypot(x - b.corners[k]![0], y - b.corners[k]![1]) < 0.05 * size);
}
