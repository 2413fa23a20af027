import { unitCalled } from '../../units/names.ts';
import type { Unit } from '../../units/units.ts';
import { AXIS_QUANTITIES, type AxisQuantity } from '../hints.ts';
import { cleared, type Doubt } from '../doubts.ts';
import { guessUnit, isPlausibleEnd, meaningOf, type Meaning } from './axis-meaning.ts';
import { isLikelyShare, isUsualShare, powerShare } from './power-witness.ts';
import type { ReadScale } from './read-scales.ts';
import { axisDoubt, scaleReadingDoubts } from './scale-doubts.ts';
import type { Side } from './tick-groups.ts';
import { pressureLike, type Title } from './title.ts';

/** An axis as it was read: values at the frame's edges, in `unit`; `confidence` is how likely all of it is right. */
export type FoundAxis = {
  readonly id: string;
  readonly quantity: AxisQuantity;
  readonly unit: string;
  readonly scale: 'linear' | 'log';
  readonly min: number;
  readonly max: number;
  readonly confidence: number;
  readonly side: Side;
  /** the words beside it, as read */
  readonly title: string;
  readonly doubts: readonly Doubt[];
  readonly from: ReadScale;
};

type Candidate = { scale: ReadScale; meaning: Meaning };

const BEST = 0.97;
const WORDS: Record<AxisQuantity, string> = {
  flow: 'flow',
  static_pressure: 'static pressure',
  total_pressure: 'total pressure',
  shaft_power: 'power',
  efficiency: 'efficiency',
};

/** Says what each scale shows: the flow axis first, then the others from the left to the right. */
export function nameAxes(scales: readonly ReadScale[], titles: ReadonlyMap<ReadScale, readonly Title[]>): FoundAxis[] {
  const candidates = scales.map((scale): Candidate => ({ scale, meaning: meaningOf(titles.get(scale) ?? []) }));
  const flows = candidates.filter((c) => c.scale.side === 'bottom' || c.scale.side === 'top');
  const values = candidates.filter((c) => !flows.includes(c));
  const flow = best(flows, flowScore);
  const axes: FoundAxis[] = [];
  if (flow) axes.push(named('x', 0, flow, 'flow'));
  const place = ({ scale }: Candidate) => (scale.side === 'left' ? -scale.distance : 1000 + scale.distance);
  for (const c of values.sort((a, b) => place(a) - place(b))) {
    if (c.meaning.quantity === 'other' || c.meaning.quantity === 'flow') continue;
    const axis = named(`y${axes.filter((a) => a.id !== 'x').length + 1}`, axes.length, c, valueQuantity(c, values));
    if (!axes.some((a) => a.id !== 'x' && saysTheSame(a, axis))) axes.push(axis);
  }
  return askAboutPower(axes);
}

/** Doubts that flow, pressure and power settle together. */
const BY_POWER: ReadonlySet<string> = new Set(['scale-point-lost', 'unit-faint']);

/** Flow, pressure and power that can't be one fan's: a multiplier of the flow scale was missed, or something was misread. */
function askAboutPower(axes: readonly FoundAxis[]): FoundAxis[] {
  const share = powerShare(axes);
  if (share !== null && isUsualShare(share)) return axes.map((a) => ({ ...a, doubts: cleared(a.doubts, BY_POWER) }));
  if (share === null || isLikelyShare(share)) return [...axes];
  const isThousands = isLikelyShare(share / 1000) && axes[0]!.max <= 1000;
  return axes.map((a, i) => {
    if (a.quantity !== 'flow') return a;
    const by = isThousands ? 1000 : 1;
    const text = isThousands
      ? 'The power scale fits the others only if the flow numbers are thousands: please check the flow scale.'
      : 'The ends of the flow, pressure and power scales do not go together: please check their numbers and units.';
    const said = axisDoubt('scales-disagree', i, text, 0.4, true);
    return {
      ...a,
      min: a.min * by,
      max: a.max * by,
      confidence: a.confidence * said.confidence,
      doubts: [...a.doubts, said],
    };
  });
}

function best(candidates: readonly Candidate[], score: (c: Candidate) => number): Candidate | null {
  let pick: Candidate | null = null;
  for (const c of candidates) if (score(c) > 0 && (!pick || score(c) > score(pick))) pick = c;
  return pick;
}

function flowScore({ scale, meaning }: Candidate): number {
  if (meaning.quantity === 'other') return 0;
  const told = meaning.quantity === 'flow' ? 4 : meaning.quantity === null ? 1 : 0.5;
  return told + (scale.side === 'bottom' ? 0.6 : 0) + 0.02 * scale.fit.weight - 0.02 * Math.abs(scale.distance);
}

/** A scale without words is a pressure on the left, an efficiency where it ends at 100 on the right. */
function valueQuantity({ scale, meaning }: Candidate, all: readonly Candidate[]): AxisQuantity | 'pressure' {
  const told = meaning.quantity;
  if (told === 'pressure' || (AXIS_QUANTITIES as readonly (string | null)[]).includes(told))
    return told as AxisQuantity;
  const others = all.filter((c) => c.scale !== scale).map((c) => c.meaning.quantity);
  if (!others.some((q) => q?.endsWith('pressure')) && scale.side === 'left') return 'pressure';
  return scale.high.value === 100 || scale.high.value === 1 ? 'efficiency' : 'shaft_power';
}

function named(id: string, index: number, { scale, meaning }: Candidate, told: AxisQuantity | 'pressure'): FoundAxis {
  const quantity: AxisQuantity = told === 'pressure' ? 'static_pressure' : told;
  const what = WORDS[quantity];
  const doubts: Doubt[] = [...scaleReadingDoubts(scale, index, what)];
  const say = (code: string, text: string, confidence: number, serious: boolean) =>
    doubts.push(axisDoubt(code, index, text, confidence, serious));
  const isNamed = meaning.quantity === told;
  if (!isNamed)
    say('axis-unnamed', `No words beside this scale say what it shows; it is taken for ${what}.`, 0.5, true);
  else if (told === 'pressure')
    say('pressure-kind-unsaid', 'The chart says “pressure” and not which: it is taken for static pressure.', 0.7, true);
  else if (meaning.sureness < 0.7)
    say(
      'axis-name-faint',
      `The words beside this scale are hard to read; it is taken for ${what}.`,
      0.75,
      meaning.sureness < 0.55,
    );
  const { unit, factor, isGuess } = unitOf(scale, meaning, quantity);
  if (isGuess)
    say('unit-unread', `The unit of the ${what} scale could not be read; ${unit.unit} is a guess.`, 0.4, true);
  else if (!meaning.isUnitSure)
    say('unit-faint', `The unit of the ${what} scale was hard to read; it is taken for ${unit.unit}.`, 0.9, false);
  const [min, max] = [clean(scale.low.value * factor), clean(scale.high.value * factor)];
  if (!isPlausibleEnd(quantity, max * unit.factor))
    say(
      'scale-implausible',
      `A ${what} scale that ends at ${max} ${unit.unit} would be unusual: please check its numbers and unit.`,
      0.3,
      true,
    );
  return {
    id,
    quantity,
    unit: unit.unit,
    scale: scale.fit.scale,
    min,
    max,
    confidence: doubts.reduce((p, d) => p * d.confidence, BEST),
    side: scale.side,
    title: meaning.text,
    doubts,
    from: scale,
  };
}

const clean = (v: number) => Number(v.toPrecision(10));

/** Units that are read where the letter before them is lost: a scale that could not end there has the greater one. */
const LOST_K: Readonly<Record<string, string>> = { Pa: 'kPa', W: 'kW' };

/** The unit, and what the printed numbers are multiplied by: "1.000" may be a thousand or one, and plausibility settles it. */
function unitOf(
  scale: ReadScale,
  meaning: Meaning,
  quantity: AxisQuantity,
): { unit: Unit; factor: number; isGuess: boolean } {
  const top = scale.high.value * meaning.multiplier;
  const said = meaning.unit?.quantity === pressureLike(quantity) ? meaning.unit : null;
  const isWhole = !said || !LOST_K[said.unit] || isPlausibleEnd(quantity, top * said.factor);
  const own = isWhole ? said : null;
  const unit = own ?? (said && unitCalled(LOST_K[said.unit]!)) ?? guessUnit(quantity, top);
  const other = thousandfold(scale);
  const swap =
    other && !isPlausibleEnd(quantity, top * unit.factor) && isPlausibleEnd(quantity, top * other * unit.factor);
  return {
    unit,
    factor: meaning.multiplier * (swap ? other : 1),
    isGuess: !own && !(quantity === 'efficiency' && meaning.quantity === quantity),
  };
}

/** 1000 or 1/1000 where every label could be read as that many times as much, else null. */
function thousandfold({ fit, labels }: ReadScale): number | null {
  const ratios = fit.believed
    .filter((b) => b.value !== 0)
    .map((b) => {
      const other = labels[b.index]!.numbers.find((n) => n.value !== b.value);
      return other ? other.value / b.value : null;
    });
  const first = ratios[0];
  const isOne = first != null && (Math.abs(first - 1000) < 1 || Math.abs(first - 0.001) < 1e-5);
  return isOne && ratios.every((r) => r !== null && Math.abs(r / first - 1) < 1e-6) ? first : null;
}

/** The same scale printed on both sides, or a second unit of the same quantity. */
function saysTheSame(a: FoundAxis, b: FoundAxis): boolean {
  if (a.scale !== b.scale) return false;
  const isCopy = Math.abs(a.min - b.min) + Math.abs(a.max - b.max) < 1e-6 * Math.abs(a.max);
  return isCopy && (a.quantity === b.quantity || b.title === '');
}
