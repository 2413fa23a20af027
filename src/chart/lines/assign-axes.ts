import type { AxisHint } from '../hints.ts';
import type { StraightenedChart } from '../straightened-chart.ts';
import { familyApart } from './fan-laws.ts';
import type { FoundLine } from './find-lines.ts';
import { impossibleShare, isSquareLaw, shapeCost } from './line-shapes.ts';
import { lineValues, valueOf, type LineValues } from './line-values.ts';
import { distanceToLine, type UnderstoodWord } from './near-words.ts';

/** Which axis each line is read on. */
export type Assignment = {
  /** axis index by line; −1 for lines that are no fan curves */
  readonly axisOf: readonly number[];
  /** what speaks against it, and against the best other one that reads this line differently, by line */
  readonly cost: number;
  readonly margins: readonly number[];
};

/** A word further off than this does not name a line, sheet pixels. */
const NEAR_WORD_PX = 40;
const WORD_SAYS = 3;
/** Dashes of a curve are read as letters, but hardly more surely than this. */
const FAINT_WORD = 0.5;
const NO_CURVE_ON_AXIS = 5;
const OTHER_LOOKS = 0.8;
const SAME_LOOKS = 0.4;
/** Colours tell speeds apart as often as quantities, dashes mostly quantities. */
const COLOUR_SHARE = 0.35;
const IMPOSSIBLE = 5;
/** Curves of one quantity mostly are those of one wheel at several speeds. */
const NO_FAMILY = 1.5;
const FAMILY_APART = 0.035;
/** Two curves over the same flows from different beginnings are one speed's in two quantities, each. */
const SAME_FLOWS = 1.25;
/** Leaving a whole line out without a reason. */
const UNKNOWN_LINE = 4;
/** A curve is neither much shorter nor much fainter than the others, unless a speed stands by it. */
const SLIGHT_LINE = 1.5;
const MOST_TRIED = 70_000;

/**
 * Finds the reading of all lines together that least speaks against: shapes, words beside them, lines that look alike
 * belong together, every axis has a curve, and flow × pressure over power is a possible efficiency.
 * @param axes without the flow axis
 */
export function assignAxes(
  chart: StraightenedChart,
  lines: readonly FoundLine[],
  axes: readonly AxisHint[],
  words: readonly UnderstoodWord[],
): Assignment & { values: LineValues[][] } {
  const values = lines.map((line) => axes.map((axis) => lineValues(chart, line, axis)));
  const pressures = axes.map((a) => a.quantity.endsWith('pressure'));
  const longest = Math.max(1, ...lines.map((l) => l.worth.across));
  const strongest = Math.max(1, ...lines.map((l) => l.worth.strength));
  const own = lines.map((line, i) => {
    const hasSpeed = words.some((w) => w.isInside && w.isSurelySpeed && isNearest(w, lines, i));
    const isSlight =
      !hasSpeed &&
      (line.worth.across < 0.35 * longest || (line.drawn === 'line' && line.worth.strength < 0.2 * strongest));
    const says = axes.map(
      (axis, a) =>
        shapeCost(values[i]![a]!, axis, axis.quantity) + wordCost(words, lines, i, axis) + (isSlight ? SLIGHT_LINE : 0),
    );
    const onPressure = pressures.indexOf(true);
    // shares of efficiency stand where their lines end, on the outermost curve: that one falls and is none
    const isOther = words.some((w) => w.isOther && isNearest(w, lines, i));
    const isSystem = onPressure >= 0 && isSquareLaw(values[i]![onPressure]!);
    const other = isSystem
      ? isOther
        ? -1
        : 0
      : isOther && Math.min(...says) >= 1
        ? 1
        : isSlight
          ? 1.5
          : UNKNOWN_LINE + Math.max(0, 1 - Math.min(...says));
    return { says, other };
  });
  const apart = lines.map((a) => lines.map((b) => looksApart(a, b)));
  const strange = axes.map((axis, a) =>
    lines.map((_, i) =>
      lines.map((__, j) =>
        i === j ? 0 : NO_FAMILY * (familyApart(values[i]![a]!, values[j]![a]!, axis.quantity) > FAMILY_APART ? 1 : 0),
      ),
    ),
  );
  const twins = lines.map((_, i) => lines.map((__, j) => i !== j && areTwins(values[i]![0]!, values[j]![0]!)));
  const badPower = lines.map((_, p) =>
    lines.map((__, w) =>
      axes.map((axis, a) => {
        const onPressure = pressures.indexOf(true);
        return axis.quantity === 'shaft_power' && onPressure >= 0
          ? (impossibleShare(values[p]![onPressure]!, values[w]![a]!, valueOf) ?? 0.3)
          : 0;
      }),
    ),
  );
  const costOf = (axisOf: readonly number[]): number => {
    let cost = 0;
    axes.forEach((_, a) => {
      if (!axisOf.includes(a)) cost += NO_CURVE_ON_AXIS;
    });
    axisOf.forEach((a, i) => {
      cost += a < 0 ? own[i]!.other : own[i]!.says[a]!;
      if (a < 0) return;
      const same = axisOf.flatMap((b, j) => (b === a && j !== i ? [apart[i]![j]!] : []));
      const rest = axisOf.flatMap((b, j) => (b >= 0 && b !== a ? [apart[i]![j]!] : []));
      if (same.length) cost += OTHER_LOOKS * Math.min(...same);
      if (same.length) cost += Math.min(...axisOf.flatMap((b, j) => (b === a && j !== i ? [strange[a]![i]![j]!] : [])));
      if (axisOf.some((b, j) => b === a && twins[i]![j])) cost += SAME_FLOWS;
      if (rest.length) cost += SAME_LOOKS * (1 - Math.min(...rest));
      if (axes[a]!.quantity !== 'shaft_power') return;
      const partners = axisOf.flatMap((b, j) => (b >= 0 && pressures[b] ? [badPower[j]![i]![a]!] : []));
      if (partners.length) cost += IMPOSSIBLE * Math.min(...partners);
    });
    return cost;
  };
  return { values, ...cheapest(lines.length, axes.length, costOf) };
}

/** The cheapest of all readings where there are few, else the best that changing one line at a time leads to. */
function cheapest(lines: number, axes: number, costOf: (axisOf: readonly number[]) => number): Assignment {
  let best: { axisOf: number[]; cost: number } = { axisOf: Array.from({ length: lines }, () => -1), cost: Infinity };
  const others = Array.from({ length: lines }, () => Array.from({ length: axes + 1 }, () => Infinity));
  const note = (axisOf: readonly number[]) => {
    const cost = costOf(axisOf);
    axisOf.forEach((a, i) => (others[i]![a + 1] = Math.min(others[i]![a + 1]!, cost)));
    if (cost < best.cost) best = { axisOf: [...axisOf], cost };
  };
  const count = (axes + 1) ** lines;
  if (count <= MOST_TRIED)
    for (let k = 0; k < count; k++) {
      const axisOf: number[] = [];
      for (let i = 0, rest = k; i < lines; i++, rest = Math.floor(rest / (axes + 1)))
        axisOf.push((rest % (axes + 1)) - 1);
      note(axisOf);
    }
  else
    for (let start = -1; start < axes; start++) {
      let at = Array.from({ length: lines }, () => start);
      for (let cost = costOf(at), before = Infinity; cost < before;) {
        before = cost;
        for (let i = 0; i < lines; i++)
          for (let a = -1; a < axes; a++) {
            const tried = at.map((v, j) => (j === i ? a : v));
            note(tried);
            const c = costOf(tried);
            if (c < cost) [cost, at] = [c, tried];
          }
      }
    }
  const margins = best.axisOf.map((a, i) => Math.min(...others[i]!.filter((_, b) => b !== a + 1)) - best.cost);
  return { axisOf: best.axisOf, cost: best.cost, margins };
}

function wordCost(words: readonly UnderstoodWord[], lines: readonly FoundLine[], i: number, axis: AxisHint): number {
  const near = words.filter((w) => w.quantity && w.isInside && w.confidence > FAINT_WORD && isNearest(w, lines, i));
  if (!near.length) return 0;
  const kind = (q: string) => (q.endsWith('pressure') ? 'pressure' : q);
  return near.some((w) => kind(w.quantity!) === kind(axis.quantity)) ? -WORD_SAYS : WORD_SAYS;
}

/** Whether a word stands near a line and nearer than near any other. */
export function isNearest(word: UnderstoodWord, lines: readonly FoundLine[], i: number): boolean {
  const own = distanceToLine(word, lines[i]!);
  return own < NEAR_WORD_PX && lines.every((l, j) => j === i || distanceToLine(word, l) > own + 1);
}

/**
 * Whether two lines begin and end at the same flows, inside the frame, at different heights: one wheel's curves of one
 * quantity at several speeds end at several flows. Total and static pressure begin together.
 */
function areTwins(a: LineValues, b: LineValues): boolean {
  const near = (p: number, q: number) => Math.abs(p - q) < SAME_PLACE;
  const end = a.u.at(-1)!;
  return (
    near(a.u[0]!, b.u[0]!) &&
    near(end, b.u.at(-1)!) &&
    end < 1 - SAME_PLACE &&
    Math.abs(a.v[0]! - b.v[0]!) > 3 * SAME_PLACE
  );
}

const SAME_PLACE = 0.012;

/** 0 where two lines are printed alike, 1 where they differ in colour or in dashes. */
function looksApart(a: FoundLine, b: FoundLine): number {
  const [la, lb] = [Math.hypot(...a.colour), Math.hypot(...b.colour)];
  const hue = Math.hypot(...a.colour.map((v, c) => v / la - b.colour[c]! / lb));
  const bare = Math.abs(a.worth.bare - b.worth.bare);
  const limited = (v: number) => Math.min(1, Math.max(0, v));
  return Math.max(COLOUR_SHARE * limited((hue - 0.1) / 0.2), limited((bare - 0.12) / 0.15));
}
