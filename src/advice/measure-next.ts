import type { MeasureNext } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { JudgedBlower, Judgement } from '../judge.ts';
import { choleskyFactor, solveLower, solveUpper } from '../numeric/cholesky.ts';
import { normalDeviates } from '../numeric/deviates.ts';
import type { Measurement } from './measurement.ts';
import { MEASUREMENT_MAKERS } from './measurements/index.ts';

/**
 * What to measure next, best first: by how far each measurement is expected to bring the verdict out of unsure.
 *
 * Every draw is taken as the truth in turn: it gives the reading one would see, and an ensemble Kalman update moves the
 * margins of all draws by what that reading tells; then the chances are counted again. Re-weighting the draws by likelihood
 * instead would let a few of them carry all the weight.
 * Source: G. Evensen, Ocean Dynamics 53 (2003) 343–367 (ensemble Kalman update with perturbed readings).
 */

/** Draws that are moved, and of those the truths that are pretended. */
const MOVED = 256;
const PRETENDED = 48;
const MOST_ADVICE = 4;
const READING_SEED = 5;
/** A reading of the curve speaks for an operating point within this share of its flow. */
const NEAR = 0.35;

/** States that no reading of curve or ducts settles. */
const OTHER_STATES = new Set(['tip-speed', 'blocked-inlet']);

/** Margins of one case: all positive means the case passes in that draw. */
type CaseMargins = {
  margins: Float64Array[];
  outside: boolean;
  flow_m3_s: number;
  /** chance of the thinned draws less that of all */
  thinning: number;
};

/** What the verdict hangs on; `neverYes`: something else leaves it unsure whatever the readings say. */
type Doubt = { cases: CaseMargins[]; confidence: number; neverYes: boolean };

/** @param index place of the blower in the job */
export function measurementsToTake(job: Job, judgement: Judgement, index: number): MeasureNext[] {
  const judged = judgement.blowers[index]!;
  const cases = marginsOf(judged, judgement.facts.loadAtMost);
  if (cases.length === 0) return [];
  const { states } = judgement.assessment.blowers[index]!;
  const doubt: Doubt = {
    cases,
    confidence: judgement.facts.confidence,
    neverYes: states.some(
      (s) => OTHER_STATES.has(s.state) && s.probability !== null && s.probability < judgement.facts.confidence,
    ),
  };
  const situation = { job, index, judged, ductDraws: judgement.ductDraws };
  const advice = MEASUREMENT_MAKERS.flatMap((make) => make(situation)).map((m) => {
    const { stillUnsure, explained } = expectation(m, doubt);
    const { measurement, text, values, detail } = m;
    return { explained, advice: { measurement, text, values, expectedDoubtRemoved: 1 - stillUnsure, detail } };
  });
  return bestOfEachKind(advice).slice(0, MOST_ADVICE);
}

type Ranked = { explained: number; advice: MeasureNext };

/** What is more likely to settle it comes first; where nothing settles it alone, what narrows the margins most. */
const better = (a: Ranked, b: Ranked): number =>
  b.advice.expectedDoubtRemoved - a.advice.expectedDoubtRemoved || b.explained - a.explained;

/** Of several hole sizes only the best one. */
function bestOfEachKind(ranked: Ranked[]): MeasureNext[] {
  const best = new Map<string, Ranked>();
  for (const r of [...ranked].sort(better)) if (!best.has(r.advice.measurement)) best.set(r.advice.measurement, r);
  return [...best.values()].map((r) => r.advice);
}

/** Margins of the required cases, thinned to the draws that are moved. */
function marginsOf(judged: JudgedBlower, loadAtMost: number): CaseMargins[] {
  return [...judged.cases.filter((c) => c.result.required), ...judged.motorOnly].flatMap((c): CaseMargins[] => {
    if (c.withMargins === null || c.result.operatingPoint === null) return [];
    const { margins, load } = c.withMargins();
    const loadMargin = load.map((x) => Math.log(loadAtMost / Math.max(x, 1e-9)));
    const judgedMargins = c.result.required ? [...margins, loadMargin] : [loadMargin];
    return [
      {
        margins: judgedMargins.map(thinned),
        thinning: chanceOf(judgedMargins.map(thinned)) - chanceOf(judgedMargins),
        outside: c.result.required && c.outside,
        flow_m3_s: c.result.operatingPoint.flow_m3_s,
      },
    ];
  });
}

/** Share of draws that keep every margin. */
function chanceOf(margins: readonly Float64Array[]): number {
  const n = margins[0]!.length;
  let kept = 0;
  for (let d = 0; d < n; d++) if (margins.every((m) => m[d]! >= 0)) kept++;
  return kept / n;
}

function thinned(values: Float64Array): Float64Array {
  if (values.length <= MOVED) return values;
  const step = values.length / MOVED;
  return Float64Array.from({ length: MOVED }, (_, i) => values[Math.floor(i * step)]!);
}

/** How often the verdict would still be unsure after the readings, and the largest share of a margin's variance they explain. */
function expectation(
  m: Measurement,
  { cases, confidence, neverYes }: Doubt,
): { stillUnsure: number; explained: number } {
  const seen = m.readings.map(({ values, sd }) => ({ values: centred(thinned(values)), sd }));
  const n = seen[0]!.values.length;
  const gain = gainOf(seen, n);
  if (gain === null) return { stillUnsure: 1, explained: 0 };
  let explained = 0;
  const gains = cases.map((c) =>
    c.margins.map((margin) => {
      const own = centred(margin);
      const covariance = seen.map(({ values }) => meanProduct(own, values));
      const weights = gain(covariance);
      const variance = meanProduct(own, own);
      if (variance > 0 && isInDoubt(margin, confidence))
        explained = Math.max(explained, weights.reduce((s, w, k) => s + w * covariance[k]!, 0) / variance);
      return weights;
    }),
  );
  const noise = normalDeviates(2 * Math.ceil(n / 2), seen.length, READING_SEED);
  const shows = (c: CaseMargins) =>
    m.showsCurveAt_m3_s !== null && Math.abs(m.showsCurveAt_m3_s / c.flow_m3_s - 1) < NEAR;
  const told = new Float64Array(seen.length * n);
  let unsure = 0;
  for (let t = 0; t < PRETENDED; t++) {
    const truth = Math.floor((t * n) / PRETENDED);
    seen.forEach(({ values, sd }, k) => {
      const error = (d: number) => sd * noise[d * seen.length + k]!;
      const shown = values[truth]! + error((truth * 7 + 3) % n);
      for (let d = 0; d < n; d++) told[k * n + d] = shown - values[d]! - error(d);
    });
    let chance = 1;
    let doubted = neverYes;
    cases.forEach((c, i) => {
      let pass = 0;
      for (let d = 0; d < n; d++) {
        let kept = true;
        for (let l = 0; l < c.margins.length && kept; l++) {
          let margin = c.margins[l]![d]!;
          for (let k = 0; k < seen.length; k++) margin += gains[i]![l]![k]! * told[k * n + d]!;
          kept = margin >= 0;
        }
        if (kept) pass++;
      }
      chance = Math.min(chance, pass / n - c.thinning);
      if (c.outside && !shows(c)) doubted = true;
    });
    if (chance >= 1 - confidence && (chance < confidence || doubted)) unsure++;
  }
  return { stillUnsure: unsure / PRETENDED, explained };
}

type Seen = { values: Float64Array; sd: number };

/** From the covariances of a margin with each reading to its gain for each; null where no reading would tell draws apart. */
function gainOf(seen: readonly Seen[], n: number): ((covariance: readonly number[]) => Float64Array) | null {
  const k = seen.length;
  const matrix = new Float64Array(k * k);
  seen.forEach((a, i) =>
    seen.forEach((b, j) => {
      matrix[i * k + j] = meanProduct(a.values, b.values) + (i === j ? a.sd ** 2 : 0);
    }),
  );
  const factor = n > 0 ? choleskyFactor(matrix, k) : null;
  return factor && ((c) => solveUpper(factor, k, solveLower(factor, k, Float64Array.from(c))));
}

function centred(values: Float64Array): Float64Array {
  const mean = values.reduce((s, v) => s + v, 0) / values.length;
  return values.map((v) => v - mean);
}

function meanProduct(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let d = 0; d < a.length; d++) sum += a[d]! * b[d]!;
  return sum / a.length;
}

/** Whether a limit is kept in some draws and missed in others, so that it is worth knowing better. */
function isInDoubt(margin: Float64Array, confidence: number): boolean {
  const kept = margin.reduce((n, x) => n + (x >= 0 ? 1 : 0), 0) / margin.length;
  return kept < confidence && kept >= 1 - confidence;
}
