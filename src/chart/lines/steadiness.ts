import { netInk } from '../trace/seed-stroke.ts';
import type { Trace } from '../trace/stroke-centre.ts';
import type { TracedCurve } from '../trace/trace.ts';
import type { TracingTable } from '../trace/tracing-table.ts';
import { roughness, type Branch } from '../trace/untangle.ts';

/** Points of a trace (2.5 px apart) compared before and after a place, and those left out around it. */
const LOOK = 24;
const AROUND = 6;
/** Ink of the grid from which on a place can't tell. */
const HIDING = 40;

/** The greatest change along a line, from a stretch before a place to the stretch behind it. */
export type Changes = {
  /** share of bare paper, 0..1: solid to dashed */
  readonly dashes: number;
  /** direction in colour space: 0 alike .. 1 */
  readonly colour: number;
  /** strength of ink, as a share */
  readonly strength: number;
  /** root mean square distance from one cubic through both, px: a kink */
  readonly course: number;
  /** point of the trace at which most speaks against its being one line; null where nothing does */
  readonly at: number | null;
};

/** What speaks against a way that changes so much, in pieces of stroke. */
export function faultOfChange({ dashes, colour, strength, course }: Omit<Changes, 'at'>): number {
  const over = (value: number, free: number) => Math.max(0, value - free);
  return (
    12 * over(dashes, 0.2) + 15 * over(colour, 0.15) + 8 * over(strength, 0.3) + 8 * Math.min(2, over(course, 0.35))
  );
}

/** A stretch of a line: its points that can tell, those with ink, the share without, and the sums of colour and ink. */
type Look = { known: number; inked: number; bare: number; sum: number[] };

const NO_CHANGE = { dashes: 0, colour: 0, strength: 0, course: 0 };
const CHANGES = ['dashes', 'colour', 'strength', 'course'] as const;

/** What changes most along a line: a trace that changed over to another line at a crossing shows it here. */
export function changesAlong({ sheet, grid }: TracingTable, { trace, drawn }: TracedCurve): Changes {
  const { x, y } = trace;
  const n = x.length;
  if (drawn === 'markers') return { ...NO_CHANGE, at: null };
  const ink = new Float64Array(n);
  const colour = new Float64Array(3 * n);
  for (let i = 0; i < n; i++) {
    const a = Math.max(0, i - 2);
    const b = Math.min(n - 1, i + 2);
    const l = Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!) || 1;
    const nx = -(y[b]! - y[a]!) / l;
    const ny = (x[b]! - x[a]!) / l;
    let best = 0;
    for (let o = -1.5; o <= 1.5; o += 0.75) {
      const v = netInk(sheet, grid, x[i]! + nx * o, y[i]! + ny * o);
      if (v > (ink[i] ?? 0)) {
        ink[i] = v;
        best = o;
      }
    }
    const px = Math.round(x[i]! + nx * best);
    const py = Math.round(y[i]! + ny * best);
    if (px < 0 || py < 0 || px >= sheet.width || py >= sheet.height) continue;
    const at = py * sheet.width + px;
    if (grid.data[at]! > HIDING) ink[i] = NaN;
    for (let c = 0; c < 3; c++) colour[3 * i + c] = sheet.ink[3 * at + c]!;
  }
  const sorted = Array.from(ink)
    .filter((v) => v === v)
    .sort((a, b) => a - b);
  const strong = sorted[Math.floor(0.6 * sorted.length)] ?? 0;
  const isHidden = hiddenRuns(Array.from(ink, (v) => v < 0.4 * strong));
  const look = (from: number): Look => {
    let known = 0;
    let inked = 0;
    const sum = [0, 0, 0, 0];
    for (let i = from; i < from + LOOK; i++) {
      if (ink[i] !== ink[i] || isHidden[i]) continue;
      known++;
      if (ink[i]! < 0.4 * strong) continue;
      inked++;
      for (let c = 0; c < 3; c++) sum[c]! += colour[3 * i + c]!;
      sum[3]! += ink[i]!;
    }
    return { known, inked, bare: 1 - inked / Math.max(1, known), sum };
  };
  const out = { ...NO_CHANGE };
  let at: number | null = null;
  let most = 0;
  for (let p = LOOK + AROUND; p + LOOK + AROUND <= n; p += 4) {
    const here = { ...NO_CHANGE };
    here.course = kinkAt(trace, p);
    const a = look(p - AROUND - LOOK);
    const b = look(p + AROUND);
    if (a.known >= LOOK / 2 && b.known >= LOOK / 2) {
      // a label breaks a line up as dashes do, and further on it is whole again
      const bare = (near: Look, from: number) => {
        const far = from >= 0 && from + LOOK <= n ? look(from) : near;
        return far.known >= LOOK / 2 ? [near.bare, far.bare] : [near.bare];
      };
      const before = bare(a, p - AROUND - 2 * LOOK);
      const behind = bare(b, p + AROUND + LOOK);
      here.dashes = Math.min(...before.flatMap((u) => behind.map((v) => Math.abs(u - v))));
      if (a.inked >= LOOK / 3 && b.inked >= LOOK / 3) {
        const la = Math.hypot(a.sum[0]!, a.sum[1]!, a.sum[2]!) || 1;
        const lb = Math.hypot(b.sum[0]!, b.sum[1]!, b.sum[2]!) || 1;
        here.colour = Math.hypot(...[0, 1, 2].map((c) => a.sum[c]! / la - b.sum[c]! / lb));
        const [sa, sb] = [a.sum[3]! / a.inked, b.sum[3]! / b.inked];
        here.strength = Math.abs(sa - sb) / Math.max(sa, sb);
      }
    }
    const fault = faultOfChange(here);
    if (fault > most) [most, at] = [fault, p];
    for (const key of CHANGES) out[key] = Math.max(out[key], here[key]);
  }
  return { ...out, at };
}

/** Which points of a trace lie in a gap longer than any between dashes: what is hidden by a label says nothing of the line. */
function hiddenRuns(isBare: readonly boolean[]): boolean[] {
  const out = isBare.map(() => false);
  for (let from = 0; from < isBare.length;) {
    let to = from;
    while (to < isBare.length && isBare[to]) to++;
    if (to - from >= LONGEST_DASH_GAP) out.fill(true, from, to);
    from = Math.max(to, from + 1);
  }
  return out;
}

/** Gaps between dashes are shorter than this, points of a trace (2.5 px apart). */
const LONGEST_DASH_GAP = 9;

/** A dip of the curve is no kink: half as far around it the course is four times as smooth, and at a kink half as rough. */
const kinkAt = (trace: Trace, at: number): number =>
  Math.min(roughAcross(trace, at, LOOK, AROUND), 2 * roughAcross(trace, at, LOOK / 2, AROUND / 2));

function roughAcross({ x, y }: Trace, at: number, look: number, around: number): number {
  const part = (from: number): Branch => ({
    x: Array.from(x.subarray(from, from + look)),
    y: Array.from(y.subarray(from, from + look)),
  });
  return roughness(part(at - around - look), part(at + around)) ?? 0;
}
