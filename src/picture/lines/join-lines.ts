import { fitLine, fittedPieces, type FittedLine } from './fit-lines.ts';
import { acrossAt, lengthOf, type PageLine } from './page-lines.ts';
import type { Chain } from './ridge-chains.ts';

/** Strokes of one polarity by the direction they were followed in. */
export type StrokesOfInk = { readonly upright: readonly Chain[]; readonly level: readonly Chain[] };

/** A line seen on less of its length than this is a chance row of specks. */
const LEAST_COVER = 0.42;
/** Crossings, specks and dashes leave gaps no wider than this. */
const NARROW_GAP_PX = 11;
/** Glare and labels leave wider ones, of no more than this share of the photo's longer edge. */
const WIDE_GAP_SHARE = 0.07;

/**
 * All printed lines of one polarity, in the order they begin.
 * @param longEdge longer edge of the view, pixels
 * @param shortest length a line must have, view pixels
 */
export function straightLines(
  strokes: StrokesOfInk,
  isDark: boolean,
  longEdge: number,
  shortest: number,
): FittedLine[] {
  const isKept = (l: PageLine) => lengthOf(l) >= shortest && l.cover >= LEAST_COVER;
  const near = (chains: readonly Chain[], upright: boolean) =>
    joined(fittedPieces(chains, upright, isDark), NARROW_GAP_PX, () => true);
  const upright = near(strokes.upright, true);
  const level = near(strokes.level, false);
  const wide = WIDE_GAP_SHARE * longEdge;
  const far = (lines: FittedLine[], others: readonly FittedLine[]) => {
    const long = others.filter((o) => lengthOf(o) >= 2 * shortest);
    return joined(lines, wide, (a, b) => !(endsOnOne(a, a.to, long) && endsOnOne(b, b.from, long)));
  };
  const ends = (lines: FittedLine[], others: readonly FittedLine[]) => {
    const long = others.filter((o) => lengthOf(o) >= 2 * shortest);
    return lines.flatMap((l) => splitBetweenPanels(l, long)).map((l) => withoutTails(l, others, long));
  };
  const [u, l] = [ends(upright, level), ends(level, upright)];
  return [...far(u, l), ...far(l, u)].filter(isKept).sort((a, b) => a.from - b.from);
}

/** Whether a line ends on one of the other direction: the gap beyond is then one between two panels. */
const endsOnOne = (line: FittedLine, along: number, others: readonly FittedLine[]): boolean => {
  const across = acrossAt(line, along);
  return others.some((o) => across > o.from - 4 && across < o.to + 4 && Math.abs(acrossAt(o, across) - along) < 5);
};

/** Two lines that bound a gap between panels stand this far apart at least. */
const LEAST_PANEL_GAP_PX = 5;

/** A line cut at a gap between two long lines of the other direction: sides of panels one over the other. */
function splitBetweenPanels(line: FittedLine, others: readonly FittedLine[]): FittedLine[] {
  const { along, across, strength } = line.points;
  for (let i = 1; i < along.length; i++) {
    const [a, b] = [along[i - 1]!, along[i]!];
    if (b - a < LEAST_PANEL_GAP_PX) continue;
    const place = acrossAt(line, (a + b) / 2);
    const bounds = others
      .filter((o) => place > o.from - 4 && place < o.to + 4)
      .map((o) => acrossAt(o, place))
      .filter((at) => at > a - 5 && at < b + 5);
    if (!bounds.length || Math.max(...bounds) - Math.min(...bounds) < LEAST_PANEL_GAP_PX) continue;
    const half = (from: number, to: number) =>
      fitLine(
        { along: along.slice(from, to), across: across.slice(from, to), strength: strength.slice(from, to) },
        line.upright,
        line.isDark,
      );
    const [first, second] = [half(0, i), half(i, along.length)];
    if (!first || !second) continue;
    return [first, ...splitBetweenPanels(second, others)];
  }
  return [line];
}

/** A tail is cut off behind a gap of more than this ... */
const TAIL_GAP_PX = 3;
/** ... unless it is as narrow as a crossing line makes it, and such a line is there. */
const CROSSING_GAP_PX = 9;
const LONGEST_TAIL_PX = 45;
/** Behind a crossing line, what is no longer than this share of the line is a label's stroke or a tick. */
const STUB_SHARE = 0.03;

/** The line without what only happens to follow it: a digit below a grid line, a word behind a rule. */
function withoutTails(line: FittedLine, others: readonly FittedLine[], long: readonly FittedLine[]): FittedLine {
  const { along, across, strength } = line.points;
  const n = along.length;
  const isCrossed = (a: number, b: number) => {
    const place = acrossAt(line, (a + b) / 2);
    return others.some((o) => {
      if (place < o.from - 4 || place > o.to + 4) return false;
      const at = acrossAt(o, place);
      return at > a - 2 && at < b + 2;
    });
  };
  const stub = STUB_SHARE * lengthOf(line);
  const isBroken = (i: number, inner: number, end: number) => {
    const [a, b] = [along[i - 1]!, along[i]!];
    if (b - a <= TAIL_GAP_PX) return false;
    const isStub = Math.abs(end - inner) < stub && !endsOnOne(line, end, long);
    return isStub || b - a > CROSSING_GAP_PX || !isCrossed(a, b);
  };
  const longest = Math.min(LONGEST_TAIL_PX, 0.3 * lengthOf(line));
  let first = 0;
  let last = n;
  for (let i = 1; i < n && along[i]! - along[0]! < longest; i++) if (isBroken(i, along[i - 1]!, along[0]!)) first = i;
  for (let i = n - 1; i > 0 && along[n - 1]! - along[i]! < longest; i--)
    if (isBroken(i, along[i]!, along[n - 1]!)) last = i;
  if (first === 0 && last === n) return line;
  const kept = {
    along: along.slice(first, last),
    across: across.slice(first, last),
    strength: strength.slice(first, last),
  };
  return fitLine(kept, line.upright, line.isDark) ?? line;
}

/** Pieces that carry each other on, put together. */
function joined(
  pieces: readonly FittedLine[],
  widest: number,
  mayJoin: (a: FittedLine, b: FittedLine) => boolean,
): FittedLine[] {
  const open = pieces.toSorted((a, b) => a.from - b.from);
  const taken = new Uint8Array(open.length);
  const lines: FittedLine[] = [];
  for (let i = 0; i < open.length; i++) {
    if (taken[i]) continue;
    let line = open[i]!;
    for (let j = i + 1; j < open.length; j++) {
      if (taken[j]) continue;
      const next = open[j]!;
      if (next.from - line.to > widest) break;
      if (!carriesOn(line, next, widest)) continue;
      if (next.from - line.to >= LEAST_PANEL_GAP_PX && !mayJoin(line, next)) continue;
      const [a, b] = [line.points, next.points];
      const whole = fitLine(
        {
          along: [...a.along, ...b.along],
          across: [...a.across, ...b.across],
          strength: [...a.strength, ...b.strength],
        },
        line.upright,
        line.isDark,
      );
      if (!whole) continue;
      taken[j] = 1;
      line = whole;
    }
    lines.push(line);
  }
  return lines;
}

function carriesOn(a: PageLine, b: PageLine, widest: number): boolean {
  const gap = b.from - a.to;
  const [long, short] = lengthOf(a) >= lengthOf(b) ? [a, b] : [b, a];
  if (gap < -3 || gap > Math.min(widest, 0.8 * lengthOf(short) + 4)) return false;
  const reach = 1.3 + 0.012 * Math.max(0, gap);
  return (
    Math.abs(acrossAt(long, short.from) - acrossAt(short, short.from)) <= reach + 0.01 * lengthOf(short) &&
    Math.abs(acrossAt(long, short.to) - acrossAt(short, short.to)) <= reach + 0.02 * lengthOf(short)
  );
}
