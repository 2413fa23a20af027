import type { TickNumber } from './tick-number.ts';

/** A label of a scale: where its middle lies, as a share of the frame, and what it may say. */
export type ScaleLabel = { readonly at: number; readonly numbers: readonly TickNumber[]; readonly confidence: number };

/** A label the scale believes, with the value it took. */
export type Believed = { readonly index: number; readonly value: number; readonly isRepaired: boolean };

export type ScaleFit = {
  readonly scale: 'linear' | 'log';
  /** value (or its logarithm) = offset + slope · share of the frame */
  readonly offset: number;
  readonly slope: number;
  readonly believed: readonly Believed[];
  /** labels that read as numbers and contradict the scale */
  readonly against: number;
  /** distance of the labels' values: the greatest one all are multiples apart by; 0 on a log scale */
  readonly step: number;
  /** root mean square of how far labels stand from their values, share of the frame */
  readonly residual: number;
  /** confidences of the believed labels, summed */
  readonly weight: number;
};

const TOLERANCE = 0.008;

/**
 * The scale most labels agree on, linear or logarithmic: every pair of labels proposes one, the others vote.
 * @returns null where fewer than three different labels agree
 * Source: M. Fischler & R. Bolles, CACM 24 (1981) 381–395, over all pairs instead of samples.
 */
export function fitScale(labels: readonly ScaleLabel[], tolerance = TOLERANCE): ScaleFit | null {
  const fits = (['linear', 'log'] as const).flatMap((scale) => bestOf(labels, scale, tolerance) ?? []);
  if (!fits.length) return null;
  // equal steps are printed on linear scales; a log scale must explain clearly more
  const [linear, log] = [fits.find((f) => f.scale === 'linear'), fits.find((f) => f.scale === 'log')];
  if (!linear || !log) return linear ?? log ?? null;
  return log.weight > linear.weight + 0.6 ||
    (log.weight > 0.99 * linear.weight && log.residual < 0.4 * linear.residual && !linear.step)
    ? log
    : linear;
}

function bestOf(labels: readonly ScaleLabel[], scale: 'linear' | 'log', tolerance: number): ScaleFit | null {
  const to = (v: number) => (scale === 'log' ? Math.log(v) : v);
  const usable = labels.map((l) => l.numbers.filter((n) => scale === 'linear' || n.value > 0));
  let best: { score: number; offset: number; slope: number } | null = null;
  for (let i = 0; i < labels.length; i++)
    for (let j = 0; j < labels.length; j++) {
      const gap = labels[j]!.at - labels[i]!.at;
      if (gap < 0.04) continue;
      for (const a of usable[i]!)
        for (const b of usable[j]!) {
          const slope = (to(b.value) - to(a.value)) / gap;
          // the scales of fan charts grow to the right and upwards
          if (!(slope > 0)) continue;
          const offset = to(a.value) - slope * labels[i]!.at;
          const score = scoreOf(labels, usable, to, offset, slope, tolerance);
          if (!best || score > best.score) best = { score, offset, slope };
        }
    }
  if (!best) return null;
  let { offset, slope } = best;
  let believed: Believed[] = [];
  for (let round = 0; round < 3; round++) {
    believed = believe(labels, usable, to, offset, slope, tolerance);
    const line = throughPoints(believed.map((b) => [labels[b.index]!.at, to(b.value)]));
    if (!line) return null;
    [offset, slope] = line;
  }
  if (scale === 'linear') believed = inStep(believed, labels);
  const values = believed.map((b) => b.value);
  if (new Set(values).size < 3 || !(slope > 0)) return null;
  const step = scale === 'linear' ? commonStep(values) : 0;
  if (scale === 'linear' && !step) return null;
  const residual = Math.sqrt(
    believed.reduce((s, b) => s + ((to(b.value) - offset) / slope - labels[b.index]!.at) ** 2, 0) / believed.length,
  );
  if (scale === 'log' && !(areWideOnLog(values, residual) && areRoundOnLog(values))) return null;
  return {
    scale,
    offset,
    slope,
    believed,
    against: labels.filter((l, i) => l.numbers.length && !believed.some((b) => b.index === i)).length,
    step,
    residual,
    weight: weightOf(believed, labels),
  };
}

function nearest(numbers: readonly TickNumber[], to: (v: number) => number, at: number, offset: number, slope: number) {
  let pick: TickNumber | null = null;
  let miss = Infinity;
  for (const n of numbers) {
    const d = Math.abs((to(n.value) - offset) / slope - at);
    if (d < miss) [pick, miss] = [n, d];
  }
  return { pick, miss };
}

function scoreOf(
  labels: readonly ScaleLabel[],
  usable: readonly (readonly TickNumber[])[],
  to: (v: number) => number,
  offset: number,
  slope: number,
  tolerance: number,
): number {
  let score = 0;
  labels.forEach((l, i) => {
    const { pick, miss } = nearest(usable[i]!, to, l.at, offset, slope);
    if (pick && miss < tolerance) score += l.confidence * pick.likelihood * (1 - 0.3 * (miss / tolerance));
  });
  return score;
}

function believe(
  labels: readonly ScaleLabel[],
  usable: readonly (readonly TickNumber[])[],
  to: (v: number) => number,
  offset: number,
  slope: number,
  tolerance: number,
): Believed[] {
  return labels.flatMap((l, index) => {
    const { pick, miss } = nearest(usable[index]!, to, l.at, offset, slope);
    return pick && miss < tolerance ? [{ index, value: pick.value, isRepaired: pick.isRepaired }] : [];
  });
}

/** Labels that so nearly say what they should, and not quite, may be left out: a tick that was read as a figure, "17.51". */
const MOST_MISFITS = 2;

/** The labels whose values are whole steps apart, where leaving out one or two makes them so: the faintest that will do. */
function inStep(believed: Believed[], labels: readonly ScaleLabel[]): Believed[] {
  const isInStep = (some: readonly Believed[]): boolean => commonStep(some.map((b) => b.value)) > 0;
  let tried = [believed];
  for (let left = 0; left <= MOST_MISFITS; left++) {
    const fitting = tried.filter(isInStep).sort((a, b) => weightOf(b, labels) - weightOf(a, labels));
    if (fitting[0]) return fitting[0];
    tried = tried.flatMap((some) => some.map((out) => some.filter((b) => b !== out)));
    tried = tried.filter((some) => some.length > MOST_MISFITS + 2);
  }
  return believed;
}

const weightOf = (believed: readonly Believed[], labels: readonly ScaleLabel[]): number =>
  believed.reduce((sum, { index }) => sum + labels[index]!.confidence, 0);

/** Least squares: [offset, slope], or null where all stand at one place. */
export function throughPoints(points: readonly (readonly [number, number])[]): [number, number] | null {
  const n = points.length;
  if (n < 2) return null;
  const mx = points.reduce((s, p) => s + p[0], 0) / n;
  const my = points.reduce((s, p) => s + p[1], 0) / n;
  const xx = points.reduce((s, p) => s + (p[0] - mx) ** 2, 0);
  if (xx < 1e-9) return null;
  const slope = points.reduce((s, p) => s + (p[0] - mx) * (p[1] - my), 0) / xx;
  return [my - slope * mx, slope];
}

const ROUND = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 8];

/** The greatest step of round size that divides all distances of the values; 0 where there is none worth it. */
export function commonStep(values: readonly number[]): number {
  const sorted = [...new Set(values)].sort((a, b) => a - b);
  const gaps = sorted.slice(1).map((v, i) => v - sorted[i]!);
  const least = Math.min(...gaps);
  for (const parts of [1, 2, 3, 4]) {
    const step = least / parts;
    const mantissa = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
    if (!ROUND.some((r) => Math.abs(mantissa - r) < 1e-6 * r)) continue;
    if (gaps.every((g) => Math.abs(g / step - Math.round(g / step)) < 1e-6)) return step;
  }
  return 0;
}

/** Labels of a log scale that spans more than this tell it from a linear one, the fewer the more. */
const WIDE = 4;
const NARROW = 1.5;
const MANY_LABELS = 5;
/** Fewer labels tell by numbers in equal steps that stand ever closer, none of them off by more than this share of the side. */
const EXACT = 0.003;

function areWideOnLog(values: readonly number[], residual: number): boolean {
  const span = Math.max(...values) / Math.min(...values);
  if (span >= WIDE) return true;
  return span >= NARROW && (values.length >= MANY_LABELS || (residual < EXACT && commonStep(values) > 0));
}

/** Labels of log scales have one figure, or two with the second a round half. */
function areRoundOnLog(values: readonly number[]): boolean {
  return values.every((v) => {
    const m = v / 10 ** Math.floor(Math.log10(v) + 1e-9);
    return Math.abs(m * 4 - Math.round(m * 4)) < 1e-6 || Math.abs(m * 10 - Math.round(m * 10)) < 1e-6;
  });
}
