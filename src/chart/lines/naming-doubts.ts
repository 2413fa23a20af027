import { pointer } from '../../issues/result.ts';
import type { Doubt } from '../doubts.ts';
import type { AxisQuantity } from '../hints.ts';

const WORDS: Record<AxisQuantity, string> = {
  flow: 'flow',
  static_pressure: 'static pressure',
  total_pressure: 'total pressure',
  shaft_power: 'power',
  efficiency: 'efficiency',
};

const doubt = (code: string, path: string, text: string, confidence: number, serious: boolean): Doubt => ({
  warning: { code, text, path },
  confidence,
  serious,
});

/** A curve that could as well be read on another axis, or be no fan curve. */
export const unsureKind = (path: string, quantity: AxisQuantity, confidence: number): Doubt =>
  doubt(
    'curve-kind-unsure',
    path,
    `This line is taken for ${WORDS[quantity]}, but it might be something else: please check what it shows.`,
    confidence,
    confidence < 0.75,
  );

/** A line left out although nothing says what it is. */
export const lineLeftOut = (x: string): Doubt =>
  doubt(
    'line-left-out',
    pointer('curves'),
    `A printed line near ${x} was left out, as it looks like no fan curve: please check.`,
    0.6,
    true,
  );

/** Pieces of print that no line accounts for. */
export const printUnexplained = (x: string): Doubt =>
  doubt(
    'print-unexplained',
    pointer('curves'),
    `Near ${x} something is printed that no curve accounts for: a curve may be missing or may have gone astray there.`,
    0.6,
    true,
  );

/** A scale on which nothing is read. */
export const axisWithoutCurve = (axisIndex: number, quantity: AxisQuantity): Doubt =>
  doubt(
    'axis-without-curve',
    pointer('axes', axisIndex),
    `There is a ${WORDS[quantity]} scale, but no curve was found for it.`,
    0.5,
    true,
  );

/** Where two lines meet, they could as well have turned the other way. */
export const turningUnsure = (path: string, x: string): Doubt =>
  doubt(
    'curve-forks',
    path,
    `Near ${x} this curve meets another one and could also go on along that one: please look whether the right branch was followed.`,
    0.6,
    true,
  );

/** A label that stands nearer to another curve than to the one that must have its speed. */
export const labelElsewhere = (path: string, speed_rpm: number): Doubt =>
  doubt(
    'speed-label-unclear',
    path,
    `The label ${speed_rpm} rpm does not stand clearly beside one curve: please check the speeds.`,
    0.5,
    true,
  );

/** A speed that nothing but one label says, and that hard to read or slower than wheels turn. */
export const speedUnconfirmed = (path: string, speed_rpm: number): Doubt =>
  doubt(
    'speed-unconfirmed',
    path,
    `No other curve bears out ${speed_rpm} rpm, and it was hard to read or is slower than wheels usually turn: please check whether a figure was lost or misread.`,
    0.6,
    true,
  );

/** Labels without curves, or curves without labels. */
export const labelsLeft = (speeds: readonly number[]): Doubt =>
  doubt(
    'speed-without-curve',
    pointer('curves'),
    `No curve was found for ${speeds.map((s) => `${s} rpm`).join(', ')}: a curve may be missing.`,
    0.5,
    true,
  );

/**
 * A curve without a speed among others that have one.
 * @param isSameWheel it follows from the others by the fan laws, so that only its speed is missing
 */
export const speedMissing = (path: string, isSameWheel: boolean): Doubt =>
  doubt(
    'speed-missing',
    path,
    'The other curves have a speed printed beside them, this one does not: please add it.',
    isSameWheel ? 0.95 : 0.6,
    !isSameWheel,
  );

/** Speeds that the fan laws do not bear out. */
export const againstFanLaws = (path: string, speed_rpm: number, other_rpm: number): Doubt =>
  doubt(
    'speeds-against-fan-laws',
    path,
    `The curves for ${speed_rpm} and ${other_rpm} rpm do not follow from each other by the fan laws: one of the speeds or curves may be read wrong.`,
    0.5,
    true,
  );

/** A curve that is drawn over less of the wheel's range than the others: of a pressure curve, an end that is missing misleads. */
export const shorterThanOthers = (path: string, end: 'first' | 'last', isPressure: boolean): Doubt =>
  doubt(
    'curve-shorter-than-others',
    path,
    end === 'first'
      ? 'This curve begins later than the others would have it: a part of it may be missing.'
      : 'This curve ends earlier than the others would have it: a part of it may be missing.',
    isPressure ? 0.6 : 0.85,
    isPressure,
  );

/** Flow times pressure is more than the power drawn. */
export const impossiblePower = (path: string): Doubt =>
  doubt(
    'power-implausible',
    path,
    'Flow times pressure does not go with this power curve: pressure, power or one of their scales may be read wrong.',
    0.4,
    true,
  );

/** An efficiency that does not come out of the other curves. */
export const efficiencyOff = (path: string): Doubt =>
  doubt(
    'efficiency-implausible',
    path,
    'This efficiency curve does not agree with flow times pressure over power: one of these curves or scales may be read wrong.',
    0.6,
    true,
  );

/** No curve at all. */
export const noCurves = (): Doubt =>
  doubt('no-curves', pointer('curves'), 'No curve was found in this plot: please tap one.', 0.3, true);
