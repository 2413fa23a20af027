import { pointer } from '../../issues/result.ts';
import { formatNumber } from '../../units/format.ts';
import { valueAt } from '../axes.ts';
import type { Doubt } from '../doubts.ts';
import type { AxisHint, AxisQuantity } from '../hints.ts';
import type { NamedCurve } from '../put-together.ts';
import { trueFractions, type StraightenedChart } from '../straightened-chart.ts';
import { assignAxes, isNearest } from './assign-axes.ts';
import { assignSpeeds } from './assign-speeds.ts';
import { bestRatio, matchAtRatio, rangesApart } from './fan-laws.ts';
import type { FoundLine, FoundLines } from './find-lines.ts';
import { impossibleShare } from './line-shapes.ts';
import { valueOf, type LineValues } from './line-values.ts';
import { understood, type PrintedWord, type UnderstoodWord } from './near-words.ts';
import * as say from './naming-doubts.ts';
import { doubtfulSpeeds } from './speed-doubts.ts';

/** The curves of a chart with what each shows, and the lines that are no fan curves. */
export type NamedLines = {
  readonly curves: readonly NamedCurve[];
  readonly distractors: readonly FoundLine[];
  readonly doubts: readonly Doubt[];
};

/** A reading of a line must be this much better than any other to be sure (in costs of `assignAxes`). */
const SURE_MARGIN = 1.5;
const FAIR_MARGIN = 0.7;
/** Choosing another turning must make the lines explain the print this much worse (pieces of stroke). */
const SURE_TURNING = 3;
/**
 * No curve loses half its ink from one stretch to the next: it goes on along a line of the grid. Of 171 traced curves none
 * lost more than 0.44, but for two that had gone astray. */
const MOST_FADING = 0.5;
/** Curves of two speeds brought together differ by less than this share of the highest value. */
const LAW_APART = 0.03;
const LAW_RATIO = 0.035;
/** Curves of one sheet begin and end alike to this share of the flow. */
const RANGE_APART = 0.08;

/**
 * Says what each line shows: the axis it is read on, its quantity and speed; drops system lines, lines of equal
 * efficiency and the like. Checks that are independent of how the lines were found – fan laws between speeds, flow ×
 * pressure ÷ power – raise doubts.
 * @param axes all axes, the flow axis among them; indices in doubts' paths are theirs
 * @param words printed in and near the plot
 * @param known speeds of the pressure curves where those are in another panel
 */
export function nameLines(
  { lines, unexplained }: FoundLines,
  chart: StraightenedChart,
  axes: readonly AxisHint[],
  words: readonly PrintedWord[],
  known: readonly number[] = [],
): NamedLines {
  const value = axes.filter((a) => a.quantity !== 'flow');
  const meant = understood(chart, words);
  const { axisOf, margins, values } = assignAxes(chart, lines, value, meant);
  const doubts: Doubt[] = [];
  const order = lines
    .map((_, i) => i)
    .filter((i) => axisOf[i]! >= 0)
    .sort((a, b) => axisOf[a]! - axisOf[b]! || top(values[b]![axisOf[b]!]!) - top(values[a]![axisOf[a]!]!));
  const speeds = new Map<number, number | null>();
  const own = new Map<number, Doubt[]>(order.map((i) => [i, []]));
  const pathOf = (i: number) => pointer('curves', order.indexOf(i));
  const quantityOf = (i: number): AxisQuantity => kinds.get(i) ?? quantityOn(value[axisOf[i]!]!, lines, i, meant);
  const kinds = new Map<number, AxisQuantity>();
  const pressureSpeeds: number[] = [];
  const pressuresFirst = value.map((_, a) => a).sort((a, b) => rank(value[a]!) - rank(value[b]!));
  pressuresFirst.forEach((a) => {
    const axis = value[a]!;
    const family = order.filter((i) => axisOf[i] === a);
    if (!family.length) return doubts.push(say.axisWithoutCurve(axes.indexOf(axis), axis.quantity));
    if (axis.quantity === 'efficiency') return family.forEach((i) => speeds.set(i, null));
    const told = assignSpeeds(
      family.map((i) => lines[i]!),
      family.map((i) => values[i]![a]!),
      meant,
      axis.quantity,
      axis.quantity.endsWith('pressure') ? [] : [...known, ...pressureSpeeds],
      order.filter((i) => axisOf[i] !== a).map((i) => lines[i]!),
    );
    if (axis.quantity.endsWith('pressure')) pressureSpeeds.push(...told.speeds.filter((n) => n !== null));
    family.forEach((i, k) => speeds.set(i, told.speeds[k]!));
    const total = totalOfTwo(
      family.map((i) => values[i]![a]!),
      told.speeds,
    );
    if (total !== null) {
      kinds.set(family[total]!, 'total_pressure');
      kinds.set(family[1 - total]!, 'static_pressure');
      return;
    }
    if (told.left.length && axis.quantity.endsWith('pressure')) doubts.push(say.labelsLeft(told.left));
    if (told.speeds.some((s) => s !== null))
      family.forEach(
        (i, k) => told.speeds[k] === null && own.get(i)!.push(say.speedMissing(pathOf(i), told.unlabelled.includes(k))),
      );
    const law = byFanLaws(family, speeds, (k) => values[k]![a]!, axis.quantity);
    for (const [i, j] of law.against) own.get(j)!.push(say.againstFanLaws(pathOf(j), speeds.get(i)!, speeds.get(j)!));
    const lawful = told.speeds.find((speed, k) => speed !== null && !told.offLaw.includes(k));
    for (const k of told.offLaw) {
      const i = family[k]!;
      if (lawful && !law.against.some(([, j]) => j === i))
        own.get(i)!.push(say.againstFanLaws(pathOf(i), lawful, told.speeds[k]!));
    }
    for (const [i, end] of law.shorter)
      own.get(i)!.push(say.shorterThanOthers(pathOf(i), end, axis.quantity.endsWith('pressure')));
    if (axis.quantity.endsWith('pressure'))
      for (const k of doubtfulSpeeds(told.speeds, meant, law.compared, told.shares))
        own.get(family[k]!)!.push(say.speedUnconfirmed(pathOf(family[k]!), told.speeds[k]!));
    // speeds that the fan laws bear out need no label close by
    if (law.against.length || law.compared < family.length - 1)
      for (const k of told.conflicts)
        own.get(family[k]!)!.push(say.labelElsewhere(pathOf(family[k]!), told.speeds[k]!));
  });
  const flowNear = (x: number, y: number) => {
    const [u] = trueFractions(chart, value[0]!.id, x, y);
    const { flow } = chart;
    const decimals = Math.max(0, Math.ceil(1.7 - Math.log10(Math.abs(flow.max - flow.min))));
    return `${formatNumber(valueAt(flow, Math.min(1, Math.max(0, u))), decimals)} ${flow.unit}`;
  };
  for (const i of order) {
    const list = own.get(i)!;
    if (margins[i]! < SURE_MARGIN)
      list.push(say.unsureKind(pathOf(i), quantityOf(i), margins[i]! < FAIR_MARGIN ? 0.6 : 0.85));
    const { turning, changes, trace } = lines[i]!;
    if (turning.margin < SURE_TURNING) list.push(say.turningUnsure(pathOf(i), flowNear(turning.x, turning.y)));
    else if (changes.strength > MOST_FADING && changes.at !== null)
      list.push(say.turningUnsure(pathOf(i), flowNear(trace.x[changes.at]!, trace.y[changes.at]!)));
  }
  for (const [i, d] of powerDoubts(order, axisOf, value, values, speeds, pathOf)) own.get(i)!.push(d);
  const distractors = lines.filter((_, i) => axisOf[i]! < 0);
  lines.forEach((line, i) => {
    if (axisOf[i]! < 0 && margins[i]! < SURE_MARGIN && !meant.some((w) => w.isOther && isNearest(w, lines, i)))
      doubts.push(say.lineLeftOut(flowNear(...middleOf(line))));
  });
  if (unexplained.length >= MANY_UNEXPLAINED)
    doubts.push(say.printUnexplained(flowNear(unexplained[0]!.x, unexplained[0]!.y)));
  if (!order.length) doubts.push(say.noCurves());
  const curves = order.map((i, k): NamedCurve => ({
    id: `c${k + 1}`,
    curve: lines[i]!,
    yAxis: value[axisOf[i]!]!.id,
    quantity: quantityOf(i),
    speed_rpm: speeds.get(i) ?? null,
    path: pathOf(i),
    doubts: own.get(i)!,
  }));
  return { curves, distractors, doubts };
}

/** A few crossings of a speck or a letter are nothing. */
const MANY_UNEXPLAINED = 5;

const rank = ({ quantity }: AxisHint) => (quantity.endsWith('pressure') ? 0 : 1);
const top = ({ value }: LineValues) => Math.max(...value);
const middleOf = ({ trace: { x, y } }: FoundLine): [number, number] => [x[x.length >> 1]!, y[y.length >> 1]!];

/** A pressure axis may carry total and static pressure: the word beside the line says which. */
function quantityOn(
  axis: AxisHint,
  lines: readonly FoundLine[],
  i: number,
  words: readonly UnderstoodWord[],
): AxisQuantity {
  if (!axis.quantity.endsWith('pressure')) return axis.quantity;
  const word = words.find((w) => w.quantity?.endsWith('pressure') && w.isInside && isNearest(w, lines, i));
  return word?.quantity ?? axis.quantity;
}

/**
 * Which of two curves is the total pressure where the other is the static pressure of the same fan: they begin together,
 * and it rises above the other about with the square of the flow. Null where they are no such pair.
 * Source: total less static pressure is the dynamic pressure at the outlet, ½ρc².
 */
function totalOfTwo(family: readonly LineValues[], speeds: readonly (number | null)[]): 0 | 1 | null {
  const [a, b] = family;
  if (!a || !b || family.length !== 2 || (speeds[0] !== speeds[1] && speeds.every((s) => s !== null))) return null;
  const shared = 0.98 * Math.min(Math.max(...a.flow), Math.max(...b.flow));
  const total = (valueOf(a, shared) ?? 0) > (valueOf(b, shared) ?? 0) ? 0 : 1;
  const [upper, lower] = total === 0 ? [a, b] : [b, a];
  const gaps = lower.flow.flatMap((q, k) => {
    const there = valueOf(upper, q);
    return there === null ? [] : [{ q, gap: (there - lower.value[k]!) / top(upper) }];
  });
  if (gaps.length < 12) return null;
  const far = gaps.at(-1)!;
  const near = gaps.filter(({ q }) => q < 0.3 * far.q);
  const middle = gaps.filter(({ q }) => q > 0.6 * far.q);
  const isPair =
    near.length > 2 &&
    near.every(({ gap }) => Math.abs(gap) < Math.min(0.03, 0.4 * far.gap)) &&
    far.gap > LEAST_GAP &&
    middle.every(({ q, gap }) => Math.abs(gap - far.gap * (q / far.q) ** 2) < 0.35 * far.gap);
  return isPair ? total : null;
}

/** Total and static pressure part by this share of the higher at least, and by less before a third of the flow. */
const LEAST_GAP = 0.015;

type LawReport = {
  /** neighbouring speeds whose curves do not follow from each other */
  against: [number, number][];
  shorter: [number, 'first' | 'last'][];
  /** pairs that do follow from each other */
  compared: number;
};

/** What the fan laws say about curves with speeds. */
function byFanLaws(
  family: readonly number[],
  speeds: ReadonlyMap<number, number | null>,
  valuesOf: (i: number) => LineValues,
  quantity: AxisQuantity,
): LawReport {
  const known = family.filter((i) => speeds.get(i)).sort((a, b) => speeds.get(b)! - speeds.get(a)!);
  const out: LawReport = { against: [], shorter: [], compared: 0 };
  for (let k = 1; k < known.length; k++) {
    const [i, j] = [known[k - 1]!, known[k]!];
    const ratio = speeds.get(i)! / speeds.get(j)!;
    if (ratio === 1) continue;
    const { apart, overlap } = matchAtRatio(valuesOf(i), valuesOf(j), ratio, quantity);
    const best = overlap > 0.5 && apart < LAW_APART ? null : bestRatio(valuesOf(i), valuesOf(j), quantity);
    if (best && (best.apart > LAW_APART || Math.abs(best.ratio / ratio - 1) > LAW_RATIO)) {
      out.against.push([i, j]);
      continue;
    }
    if (!best && !(overlap > 0.5 && apart < LAW_APART)) {
      out.against.push([i, j]);
      continue;
    }
    out.compared++;
    const { first, last } = rangesApart(valuesOf(i), valuesOf(j), ratio);
    if (Math.abs(first) > RANGE_APART) out.shorter.push([first > 0 ? i : j, 'first']);
    if (Math.abs(last) > RANGE_APART) out.shorter.push([last < 0 ? i : j, 'last']);
  }
  return out;
}

/** Power and efficiency against flow times pressure, each with the pressure curve of its own speed. */
function* powerDoubts(
  order: readonly number[],
  axisOf: readonly number[],
  axes: readonly AxisHint[],
  values: readonly LineValues[][],
  speeds: ReadonlyMap<number, number | null>,
  pathOf: (i: number) => string,
): Generator<[number, Doubt]> {
  const on = (i: number) => values[i]![axisOf[i]!]!;
  const of = (kind: (q: AxisQuantity) => boolean) => order.filter((i) => kind(axes[axisOf[i]!]!.quantity));
  const pressures = of((q) => q.endsWith('pressure'));
  for (const i of of((q) => q === 'shaft_power')) {
    const partners = pressures.filter(
      (p) => pressures.length === 1 || speeds.get(i) == null || speeds.get(p) === speeds.get(i),
    );
    const shares = partners.map((p) => impossibleShare(on(p), on(i), valueOf)).filter((s) => s !== null);
    if (shares.length && Math.min(...shares) > 0.1) yield [i, say.impossiblePower(pathOf(i))];
    const efficiencies = of((q) => q === 'efficiency');
    if (pressures.length !== 1 || efficiencies.length !== 1 || of((q) => q === 'shaft_power').length !== 1) continue;
    const apart: number[] = [];
    on(efficiencies[0]!).flow.forEach((q, k) => {
      const p = valueOf(on(pressures[0]!), q);
      const w = valueOf(on(i), q);
      if (p !== null && w !== null && w > 0) apart.push(Math.abs((q * p) / w - on(efficiencies[0]!).value[k]!));
    });
    const usual = apart.sort((a, b) => a - b)[apart.length >> 1];
    // total and static efficiency differ by the speed of the air at the outlet
    if (usual !== undefined && usual > 0.15) yield [efficiencies[0]!, say.efficiencyOff(pathOf(efficiencies[0]!))];
  }
}
