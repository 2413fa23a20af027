import { crossing, type LineWeb } from '../../picture/lines/line-webs.ts';
import { isCollinear, lengthOf, type PageLine } from '../../picture/lines/page-lines.ts';

/** How one side of a candidate frame is backed: shares 0..1. */
export type SideSigns = {
  readonly line: PageLine;
  /** of its length, printed */
  readonly cover: number;
  /** of the lines that come to it, ending there */
  readonly ends: number;
  /** of them, running on beyond it */
  readonly passes: number;
  /** whether its line is stronger than the grid */
  readonly standsOut: boolean;
  /** how many lines end there */
  readonly enders: number;
};

/** A line that may be a side, with all that crosses it. */
export type Candidate = {
  readonly line: PageLine;
  /** lines on the same course, in the order they begin */
  readonly pieces: readonly PageLine[];
  /** where it crosses each of the web's lines of the other direction, in their order; NaN where it does not */
  readonly meets: readonly { readonly line: PageLine; readonly here: number; readonly there: number }[];
  /** whether it is stronger than the grid it would close off */
  readonly standsOut: boolean;
};

const MOST_MEETING = 60;

/** Prepares lines of one direction to be tried as sides. */
export function candidatesOf(lines: readonly PageLine[], web: LineWeb, all: readonly PageLine[]): Candidate[] {
  const upright = lines[0]?.upright ?? true;
  const others = (upright ? web.level : web.upright)
    .toSorted((a, b) => lengthOf(b) * b.cover - lengthOf(a) * a.cover)
    .slice(0, MOST_MEETING);
  const own = (upright ? web.upright : web.level).map((l) => l.strength).sort((a, b) => a - b);
  const usual = own[Math.floor(0.35 * own.length)] ?? 0;
  return lines.map((line) => ({
    line,
    pieces: line.cover ? all.filter((o) => o.upright === upright && isCollinear(line, o)) : [],
    meets: others.map((other) => {
      const at = upright ? crossing(line, other) : crossing(other, line);
      return { line: other, here: at?.[upright ? 1 : 0] ?? NaN, there: at?.[upright ? 0 : 1] ?? NaN };
    }),
    standsOut: own.length < 4 || line.strength > 1.25 * usual,
  }));
}

/** Share of a side that is printed. */
export function coverOf({ pieces }: Candidate, from: number, to: number): number {
  let seen = 0;
  let reached = from;
  for (const p of pieces) {
    const a = Math.max(reached, p.from - 4);
    const b = Math.min(to, p.to + 4);
    if (b <= a) continue;
    seen += (b - a) * Math.min(1, 1.15 * p.cover);
    reached = b;
  }
  return Math.max(0, Math.min(1, seen / (to - from)));
}

/** Where a printed side is interrupted, as shares of it from its begin; at its ends it is not. */
export function gapsOf({ pieces }: Candidate, from: number, to: number): [number, number][] {
  const gaps: [number, number][] = [];
  let reached = -Infinity;
  for (const p of pieces) {
    const [a, b] = [reached, p.from].map((v) => (v - from) / (to - from)) as [number, number];
    if (a > 0.03 && b < 0.97 && p.from - reached > LEAST_GAP_PX) gaps.push([a, b]);
    reached = Math.max(reached, p.to);
  }
  return gaps;
}

const LEAST_GAP_PX = 4;

/** Beyond a side, ticks go on for this share of the frame, and printed grid lines for more than the first. */
const TICK_SHARE = 0.035;
/** Up to this share it can only be a tick. */
const SURE_TICK_SHARE = 0.016;
const END_SLACK_PX = 4;

/**
 * What the lines between two opposite sides do at one of them; long ones count most.
 * @param from,to the corners' places along the side
 * @param isFar whether it is the side of the greater coordinate
 */
export function signsAt(
  side: Candidate,
  opposite: Candidate,
  from: number,
  to: number,
  isFar: boolean,
  cover: number,
): SideSigns {
  const slack = END_SLACK_PX + 0.01 * (to - from);
  let [total, ends, passes, stubs, enders] = [0, 0, 0, 0, 0];
  for (let i = 0; i < side.meets.length; i++) {
    const { line, here, there } = side.meets[i]!;
    if (!(here >= from - slack && here <= to + slack)) continue;
    // opposite sides were prepared from the same web: their crossings stand in the same order
    const beyondAll = opposite.meets[i]!.there;
    const [low, high] = isFar ? [beyondAll, there] : [there, beyondAll];
    const span = high - low;
    const inside = (Math.min(line.to, high) - Math.max(line.from, low)) / span;
    if (!(inside > 0.12)) continue;
    const weight = inside * inside * line.cover;
    const beyond = isFar ? line.to - high : low - line.from;
    total += weight;
    if (beyond > END_SLACK_PX + TICK_SHARE * span) passes += weight;
    else if (beyond > END_SLACK_PX + SURE_TICK_SHARE * span) stubs += weight;
    else if (beyond > -(END_SLACK_PX + 0.012 * span)) {
      ends += weight;
      enders++;
    }
  }
  if (total === 0) return { line: side.line, cover, ends: 0, passes: 0, standsOut: side.standsOut, enders };
  // where all lines run a little beyond what is but one of them, the area ends where they do
  if (side.standsOut || stubs < 0.7 * total) ends += stubs;
  else passes += 0.7 * stubs;
  return { line: side.line, cover, ends: ends / total, passes: passes / total, standsOut: side.standsOut, enders };
}
