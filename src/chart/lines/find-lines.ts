import { sharedWay } from '../trace/apart.ts';
import { endOf } from '../trace/curve-ends.ts';
import { traceLine } from '../trace/trace-line.ts';
import type { TracedCurve } from '../trace/trace.ts';
import type { TracingTable } from '../trace/tracing-table.ts';
import type { SeedStroke } from '../trace/seed-stroke.ts';
import { isRoundBox } from './box-edges.ts';
import { chooseLines } from './choose-lines.ts';
import { exchanged } from './crossings.ts';
import { hideWords } from './hide-words.ts';
import { joints, type Piece } from './join-pieces.ts';
import { isIn, lineSeeds, withHalo, type SheetBox } from './line-seeds.ts';
import { worthOf, type LineWorth } from './line-worth.ts';
import { markerLines } from './marker-lines.ts';
import { withSharedEnds } from './shared-ends.ts';
import { parted } from './parted.ts';
import { scraps } from './scraps.ts';
import { runsStraightThrough } from './straight-through.ts';
import { strayIslands } from './stray-islands.ts';
import { changesAlong, faultOfChange, type Changes } from './steadiness.ts';
import { isNear, isOn, strokeRuns } from './stroke-runs.ts';

/** A printed line of the chart, whatever it may stand for. */
export type FoundLine = TracedCurve & {
  readonly worth: LineWorth;
  readonly changes: Changes;
  /** from how many places it was traced alike */
  readonly votes: number;
  /** how much worse the lines would explain the print had this one turned the other way, and where it could have */
  readonly turning: { readonly margin: number; readonly x: number; readonly y: number };
};

export type FoundLines = {
  readonly lines: readonly FoundLine[];
  /** clear pieces of stroke that none of the lines accounts for, sheet pixels */
  readonly unexplained: readonly { readonly x: number; readonly y: number }[];
};

/** Much fainter strokes than the clearest line's are texture, stains or show-through. */
const FAINTEST = 0.1;
const REACH_PX = 1.5;
const MOST_TRACES = 50;
const LONGEST_JOINT = 0.1;
/** Two traces that share this much of the longer one's way are one line traced twice. */
const SAME = 0.9;

/**
 * Every line in a flattened plot frame, found without taps. From the clearest pieces of stroke on, each is traced to
 * its ends until every piece lies on a trace; each trace is tried again from its other half, which may take another way
 * at a crossing. Of all these ways the set is kept that explains the pieces best, each once. Rows of markers without a
 * line are looked for in what is left.
 * @param boxes where words were read, sheet pixels
 */
export function findLines(plain: TracingTable, boxes: readonly SheetBox[] = []): FoundLines {
  const all = lineSeeds(plain, boxes);
  const strong = all[Math.floor(all.length * 0.2)]?.contrast ?? 0;
  const widths = all
    .slice(0, Math.ceil(all.length * 0.4))
    .map((s) => s.width)
    .sort((a, b) => a - b);
  const strokeWidth = widths[widths.length >> 1] ?? 2;
  const { table, words, islands } = hideWords(plain, boxes, Math.max(12, 0.3 * strong), strokeWidth);
  const runs = strokeRuns(table);
  // a curve that runs through the box of a word is none of its letters
  const seeds = lineSeeds(table);
  const ways: FoundLine[] = [];
  const refused: TracedCurve[] = [];
  let traces = 0;
  const strongest = () => ways.reduce((m, w) => Math.max(m, w.worth.strength), 0);
  const add = (seed: SeedStroke): FoundLine | null => {
    traces++;
    const traced = traceLine(table, seed.x, seed.y, REACH_PX, []);
    if (!traced) return null;
    const line = measured(table, traced, 1);
    if (!isLine(table, line, ways)) {
      refused.push(traced);
      return null;
    }
    const same = ways.findIndex((w) => isSame(w, line));
    if (same >= 0) ways[same] = { ...ways[same]!, votes: ways[same]!.votes + 1 };
    else ways.push(line);
    return line;
  };
  for (const seed of seeds) {
    if (seed.contrast < FAINTEST * strongest() || traces >= MOST_TRACES) break;
    if ([...ways, ...refused].some((w) => isOn(w.trace, seed)) || !runs.isLong(seed)) continue;
    if (ways.some((w) => runs.leadsTo(seed, w.trace))) continue;
    const line = add(seed);
    if (!line) continue;
    // from the other half
    const middle = (line.trace.x[0]! + line.trace.x.at(-1)!) / 2;
    const there = seeds.filter(
      (s) =>
        isOn(line.trace, s) && s.x > middle !== seed.x > middle && Math.abs(s.x - middle) > 0.2 * line.worth.across,
    );
    if (there[0] && Math.abs(there[0].x - seed.x) > 40) add(there[0]);
  }
  ways.push(...otherTurnings(table, ways));
  ways.push(...partsOf(table, ways));
  const clear = seeds.filter((s) => s.contrast >= FAINTEST * strongest() && ways.some((w) => isOn(w.trace, s)));
  const chosen = chooseLines(
    ways.map((w) => ({
      explains: clear.flatMap((s, i) => (isOn(w.trace, s) ? [i] : [])),
      fault: faultOf(w),
    })),
    clear.length,
    (a, b) =>
      sharedWay(ways[a]!, ways[b]!) > ALIKE &&
      Math.min(ways[a]!.trace.x.length, ways[b]!.trace.x.length) > 0.6 * ways[b]!.trace.x.length,
  ).map(({ index, margin, instead }): FoundLine => {
    const way = ways[index]!;
    const other = instead === null ? null : ways[instead]!;
    return { ...way, turning: { margin: isKinked(other, way) ? Infinity : margin, ...partingOf(way, other) } };
  });
  // a label near its end leaves too little of a curve to be a line by itself
  const short = refused.filter((r) => chosen.every((line) => sharedWay(r, line) < APART));
  const whole = sharingEnds(joined(table, chosen, [...scraps(table.sheet, islands, chosen), ...short], words));
  const found = whole.map((line) => {
    const others = whole.filter((o) => o !== line);
    const isSettled = (at: { x: number; y: number }) =>
      isBehindWord(line, at, words) || runsStraightThrough(line, others, at);
    return { ...line, doubts: line.doubts.filter((at) => !isSettled(at)) };
  });

  const markers = markerLines(table, islands, found).map((m) => measured(table, m, 1));
  const lines = [...found, ...markers];
  const isExplained = (s: SeedStroke) =>
    [...lines, ...refused].some((f) => isOn(f.trace, s)) ||
    lines.some((f) => isNear(f.trace, s, MARKER_PX) || runs.leadsTo(s, f.trace));
  return {
    lines,
    unexplained: [
      ...seeds.filter((s) => s.contrast > CLEAR * strongest() && !isExplained(s) && runs.isLong(s)),
      ...strayIslands(plain, islands, words, lines, 1.5 * CLEAR * strongest()),
    ],
  };
}

/** Half the size of a marker on a line, sheet pixels: its strokes are no other line's. */
const MARKER_PX = 9;

/** Share of the clearest line's ink from which on a piece of print must be accounted for. */
const CLEAR = 0.4;
const ALIKE = 0.8;
/** What shares less of its way with a line is none of it. */
const APART = 0.3;

/** Another way has a kink where this one has none: root mean square, sheet pixels, and times this one's. */
const KINK_PX = 0.4;
const KINKS = 4;

const isKinked = (other: FoundLine | null, way: FoundLine): boolean =>
  other !== null && other.changes.course > Math.max(KINK_PX, KINKS * way.changes.course);

/** A curve seen so far beyond a label was not led astray by its letters, sheet pixels. */
const BEYOND_WORD_PX = 40;

/** Whether the other way a line might have gone is a word that stands on it. */
function isBehindWord({ trace }: FoundLine, at: { x: number; y: number }, words: readonly SheetBox[]): boolean {
  const isFar = ([0, 1] as const).every((k) => {
    const end = endOf(trace, k);
    return Math.hypot(end.x - at.x, end.y - at.y) > BEYOND_WORD_PX;
  });
  return isFar && words.some((w) => isIn(withHalo(w), at.x, at.y));
}

/** Where a way parts from another one: the first of its points that is not on it; its middle where there is no other. */
function partingOf({ trace: { x, y } }: TracedCurve, other: TracedCurve | null): { x: number; y: number } {
  let at = x.length >> 1;
  if (other) {
    const isOnIt = Array.from(x, (v, i) =>
      other.trace.x.some((ox, k) => Math.abs(ox - v) < 6 && Math.abs(other.trace.y[k]! - y[i]!) < 6),
    );
    const change = isOnIt.findIndex((on, i) => i > 0 && on !== isOnIt[i - 1]);
    if (change > 0) at = change;
  }
  return { x: x[at]!, y: y[at]! };
}

const measured = (table: TracingTable, line: TracedCurve, votes: number): FoundLine => ({
  ...line,
  worth: worthOf(table, line),
  changes: changesAlong(table, line),
  votes,
  turning: { margin: Infinity, x: line.trace.x[0]!, y: line.trace.y[0]! },
});

/** What speaks against a way, in pieces of stroke. */
function faultOf({ votes, changes, doubts }: FoundLine): number {
  return (votes > 1 ? 0 : votes > 0 ? 1 : 1.5) + faultOfChange(changes) + 2 * doubts.length;
}

/** What the ways would be had they turned the other way where they meet. */
function otherTurnings(table: TracingTable, ways: readonly FoundLine[]): FoundLine[] {
  const out: FoundLine[] = [];
  for (let a = 0; a < ways.length; a++)
    for (let b = a + 1; b < ways.length; b++)
      for (const pair of exchanged(ways[a]!, ways[b]!))
        for (const way of pair) {
          const line = measured(table, way, 0);
          if (isLine(table, line, ways) && ![...ways, ...out].some((w) => isSame(w, line))) out.push(line);
        }
  return out;
}

/** A way that changes much at one place may be two lines, one of which ends on the other there: each part by itself. */
function partsOf(table: TracingTable, ways: readonly FoundLine[]): FoundLine[] {
  const out: FoundLine[] = [];
  const queue = [...ways];
  for (let way = queue.shift(); way && out.length < MOST_PARTS; way = queue.shift()) {
    if (way.changes.at === null || faultOfChange(way.changes) < PARTS_AT) continue;
    for (const part of parted(table.sheet, way, way.changes.at)) {
      const line = measured(table, part, 0);
      if (!isLine(table, line, ways)) continue;
      queue.unshift(line);
      if (![...ways, ...out].some((w) => isSame(w, line))) out.push(line);
    }
  }
  return out;
}

const PARTS_AT = 2;
const MOST_PARTS = 60;

const isSame = (a: TracedCurve, b: TracedCurve): boolean => {
  const [short, long] = [a.trace.x.length, b.trace.x.length].sort((p, q) => p - q) as [number, number];
  return short > SAME * long && sharedWay(a, b) > SAME;
};

function sharingEnds(lines: readonly FoundLine[]): FoundLine[] {
  const traces = withSharedEnds(lines.map((l) => l.trace));
  return lines.map((l, i) => (traces[i] === l.trace ? l : { ...l, trace: traces[i]!, looseEnds: [] }));
}

/** Lines and scraps that go on with each other put together; scraps that go on with none are left. */
function joined(
  table: TracingTable,
  lines: readonly FoundLine[],
  scraps: readonly Piece[],
  words: readonly SheetBox[],
): FoundLine[] {
  const out = [...lines];
  const rest = [...scraps];
  for (;;) {
    const joint = joints([...out, ...rest], LONGEST_JOINT * table.sheet.frameWidth, words, rest.length)[0];
    if (!joint) return out;
    const { first, second, trace } = joint;
    const parts = [out[first], out[second]].filter((line) => line !== undefined);
    const whole = {
      ...parts[0]!,
      trace,
      doubts: parts.flatMap(({ doubts }) => doubts),
      looseEnds: parts
        .flatMap(({ looseEnds }) => looseEnds)
        .filter((loose) =>
          ([0, 1] as const).some((k) => {
            const end = endOf(trace, k);
            return Math.hypot(end.x - loose.x, end.y - loose.y) < SAME_END_PX;
          }),
        ),
      votes: Math.min(...parts.map(({ votes }) => votes)),
    };
    const [turning] = parts.map((line) => line.turning).sort((a, b) => a.margin - b.margin);
    const line = { ...measured(table, whole, whole.votes), turning: turning! };
    if (parts.length === 2) {
      out[first] = line;
      out.splice(second, 1);
    } else {
      out[Math.min(first, second)] = line;
      rest.splice(Math.max(first, second) - out.length, 1);
    }
  }
}

const SAME_END_PX = 15;

/** Whether a trace can be a line of a chart at all. */
function isLine({ sheet }: TracingTable, { trace, worth, width }: FoundLine, found: readonly FoundLine[]): boolean {
  if (worth.length < 0.15 * sheet.frameWidth || worth.seen < 0.3 || worth.across < 6 || worth.roughness > 1.6)
    return false;
  // edges of boxes, left-over grid
  if ((worth.up < 4 + 0.01 * worth.across && worth.bow < 2.5) || isRoundBox(trace)) return false;
  const clearest = found[0];
  if (!clearest) return true;
  // stains and shadows are wide and faint
  return (
    worth.strength > 0.6 * clearest.worth.strength ||
    (worth.strength > FAINTEST * clearest.worth.strength && width < 1.8 * clearest.width + 0.5)
  );
}
