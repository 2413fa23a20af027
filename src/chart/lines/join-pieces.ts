import { bridgeGaps } from '../trace/bridge.ts';
import type { Trace } from '../trace/stroke-centre.ts';
import { roughness, type Branch } from '../trace/untangle.ts';
import { isIn, withHalo, type SheetBox } from './line-seeds.ts';

/** What must be known of a piece to tell whether another one goes on with it. */
export type Piece = {
  readonly trace: Trace;
  readonly colour: readonly [number, number, number];
  readonly width: number;
};

/** Points of a trace (2.5 px apart) looked at on both sides of a joint. */
const LOOK = 24;
const TOUCH_PX = 4.5;
/** A course through a joint rougher than this (root mean square, px) has a kink in it. */
const KINK_PX = 0.7;
const LEAST_POINTS = 5;

/** A scrap is bridged to over so much less of bare paper than a line is. */
const SCRAP_SHARE = 0.4;

/** Where the right end of `first` and the left end of `second` may be one line. */
export type Joint = {
  readonly first: number;
  readonly second: number;
  readonly cost: number;
  readonly trace: Trace;
};

/**
 * Pieces that go on with each other: ends that overlap or lie across a short gap, of one ink and width, with a smooth
 * course from one to the other. Smoothest first; every piece end is used once.
 * @param longestGap sheet pixels of bare paper that may be bridged
 * @param words where words stand: a label that interrupts its curve leaves a gap as long as itself
 * @param scraps the last so many pieces are no lines themselves: they only go on with one, behind a label
 */
export function joints(
  pieces: readonly Piece[],
  longestGap: number,
  words: readonly SheetBox[] = [],
  scraps = 0,
): Joint[] {
  const lines = pieces.length - scraps;
  const found: Joint[] = [];
  pieces.forEach((a, first) =>
    pieces.forEach((b, second) => {
      if (first === second || inkApart(a, b) > 0.3 || a.width > 1.7 * b.width || b.width > 1.7 * a.width) return;
      if (first >= lines && second >= lines) return;
      const isScrap = first >= lines || second >= lines;
      const bareGap = isScrap ? SCRAP_SHARE * longestGap : longestGap;
      const joint = joinedAt(a.trace, b.trace, bareGap, LONGEST_LABELLED * longestGap, words);
      if (joint) found.push({ first, second, ...joint });
    }),
  );
  found.sort((p, q) => p.cost - q.cost);
  const firsts = new Set<number>();
  const seconds = new Set<number>();
  return found.filter(({ first, second }) => {
    if (firsts.has(first) || seconds.has(second)) return false;
    firsts.add(first);
    seconds.add(second);
    return true;
  });
}

const inkApart = ({ colour: a }: Piece, { colour: b }: Piece) =>
  Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) / Math.max(Math.hypot(...a), Math.hypot(...b));

function joinedAt(
  a: Trace,
  b: Trace,
  longestGap: number,
  longestLabelled: number,
  words: readonly SheetBox[],
): { cost: number; trace: Trace } | null {
  // where the last of `a` lies on `b` it is cut off, and what `b` has before that
  let end = a.x.length - 1;
  let from = 0;
  while (end > LEAST_POINTS && nearest(b, a.x[end]!, a.y[end]!).distance < TOUCH_PX) end--;
  if (end < a.x.length - 1) from = nearest(b, a.x[end + 1]!, a.y[end + 1]!).at;
  if (from > LEAST_POINTS || b.x.length - from < LEAST_POINTS || end < LEAST_POINTS) return null;
  const dx = b.x[from]! - a.x[end]!;
  const dy = b.y[from]! - a.y[end]!;
  const gap = Math.hypot(dx, dy);
  if (dx < -6 || gap > longestLabelled) return null;
  const bare = barePart(a.x[end]!, a.y[end]!, dx, dy, words);
  if (gap > longestGap && gap * bare > longestGap) return null;
  const cost = roughness(
    part(a, Math.max(0, end + 1 - LOOK), end + 1),
    part(b, from, Math.min(b.x.length, from + LOOK)),
  );
  if (cost === null || cost > KINK_PX + 0.01 * gap || !isForward(a, end, b, from, bare < COVERED)) return null;
  return { cost: cost + 0.01 * gap, trace: bridged(a, end, b, from, gap) };
}

/** Share of the straight way across a gap on which no word stands. A curve that bends beside it still runs through the word. */
function barePart(x: number, y: number, dx: number, dy: number, words: readonly SheetBox[]): number {
  let bare = 0;
  for (let k = 0; k < LOOKS; k++) {
    const [px, py] = [x + ((k + 0.5) / LOOKS) * dx, y + ((k + 0.5) / LOOKS) * dy];
    if (!words.some((w) => isIn(withHalo(w), px, py))) bare++;
  }
  return bare / LOOKS;
}

const LOOKS = 24;
/** A label is no longer than so many bare gaps. */
const LONGEST_LABELLED = 3;

const part = ({ x, y }: Trace, from: number, to: number): Branch => ({
  x: Array.from(x.subarray(from, to)),
  y: Array.from(y.subarray(from, to)),
});

/** Where no more than this share of a gap is bare, a label may cover a dip of the curve as well. */
const COVERED = 0.35;
/** How far a way may turn across a gap, and at each side of it, rad. */
const TURN = { bare: [0.8, 0.6], covered: [1.5, 1] } as const;

/** Whether the way across turns little at both sides of the gap. */
function isForward(a: Trace, end: number, b: Trace, from: number, isCovered: boolean): boolean {
  const [whole, each] = TURN[isCovered ? 'covered' : 'bare'];
  const before = Math.max(0, end - 8);
  const after = Math.min(b.x.length - 1, from + 8);
  const into = Math.atan2(a.y[end]! - a.y[before]!, a.x[end]! - a.x[before]!);
  const on = Math.atan2(b.y[after]! - b.y[from]!, b.x[after]! - b.x[from]!);
  const over = Math.atan2(b.y[from]! - a.y[end]!, b.x[from]! - a.x[end]!);
  const gap = Math.hypot(b.y[from]! - a.y[end]!, b.x[from]! - a.x[end]!);
  const off = (p: number, q: number) => Math.abs(Math.atan2(Math.sin(p - q), Math.cos(p - q)));
  return off(into, on) < whole && (gap < 8 || (off(into, over) < each && off(over, on) < each));
}

function bridged(a: Trace, end: number, b: Trace, from: number, gap: number): Trace {
  const steps = Math.max(0, Math.round(gap / 2.5) - 1);
  const between = (p: number, q: number) =>
    Array.from({ length: steps }, (_, k) => p + ((q - p) * (k + 1)) / (steps + 1));
  const join = (key: 'x' | 'y') =>
    Float64Array.from([
      ...a[key].subarray(0, end + 1),
      ...between(a[key][end]!, b[key][from]!),
      ...b[key].subarray(from),
    ]);
  const x = join('x');
  const y = join('y');
  const seen = Float64Array.from([
    ...a.seen.subarray(0, end + 1),
    ...new Float64Array(steps),
    ...b.seen.subarray(from),
  ]);
  const hidden = new Uint8Array(x.length);
  hidden.fill(1, end + 1, end + 1 + steps);
  bridgeGaps(x, y, hidden);
  return { x, y, seen };
}

function nearest({ x, y }: Trace, px: number, py: number): { at: number; distance: number } {
  let at = 0;
  let distance = Infinity;
  for (let i = 0; i < x.length; i++) {
    const d = Math.hypot(x[i]! - px, y[i]! - py);
    if (d < distance) {
      distance = d;
      at = i;
    }
  }
  return { at, distance };
}
