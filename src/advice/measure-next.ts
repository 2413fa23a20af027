import type { MeasureNext } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { JudgedBlower, Judgement } from '../judge.ts';
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

/** Margins of one case: all positive means the case passes in that draw. */
type CaseMargins = { margins: Float64Array[]; outside: boolean; flow_m3_s: number };

/** @param index place of the blower in the job */
export function measurementsToTake(job: Job, judgement: Judgement, index: number): MeasureNext[] {
  const judged = judgement.blowers[index]!;
  const cases = marginsOf(judged, judgement.facts.loadAtMost);
  if (cases.length === 0) return [];
  const { confidence } = judgement.facts;
  const situation = { job, index, judged, ductDraws: judgement.ductDraws };
  const advice = MEASUREMENT_MAKERS.flatMap((make) => make(situation)).map((m) => {
    const { stillUnsure, explained } = expectation(m, cases, confidence);
    const { measurement, text, detail } = m;
    return { explained, advice: { measurement, text, expectedDoubtRemoved: 1 - stillUnsure, detail } };
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
        outside: c.result.required && c.outside,
        flow_m3_s: c.result.operatingPoint.flow_m3_s,
      },
    ];
  });
}

function thinned(values: Float64Array): Float64Array {
  if (values.length <= MOVED) return values;
  const step = values.length / MOVED;
  return Float64Array.from({ length: MOVED }, (_, i) => values[Math.floor(i * step)]!);
}

/** How often the verdict would still be unsure after the reading, and the largest share of a margin's variance it explains. */
function expectation(
  m: Measurement,
  cases: readonly CaseMargins[],
  confidence: number,
): { stillUnsure: number; explained: number } {
  const reading = thinned(m.reading);
  const n = reading.length;
  const mean = reading.reduce((s, y) => s + y, 0) / n;
  const variance = reading.reduce((s, y) => s + (y - mean) ** 2, 0) / n + m.sd ** 2;
  if (!(variance > 0)) return { stillUnsure: 1, explained: 0 };
  let explained = 0;
  const noise = normalDeviates(2 * Math.ceil(n / 2), 1, READING_SEED);
  const gains = cases.map((c) =>
    c.margins.map((margin) => {
      const middle = margin.reduce((s, x) => s + x, 0) / n;
      let covariance = 0;
      let own = 0;
      for (let d = 0; d < n; d++) {
        covariance += ((margin[d]! - middle) * (reading[d]! - mean)) / n;
        own += (margin[d]! - middle) ** 2 / n;
      }
      if (own > 0 && isInDoubt(margin, confidence)) explained = Math.max(explained, covariance ** 2 / variance / own);
      return covariance / variance;
    }),
  );
  const shows = (c: CaseMargins) =>
    m.showsCurveAt_m3_s !== null && Math.abs(m.showsCurveAt_m3_s / c.flow_m3_s - 1) < NEAR;
  let unsure = 0;
  for (let t = 0; t < PRETENDED; t++) {
    const truth = Math.floor((t * n) / PRETENDED);
    const seen = reading[truth]! + m.sd * noise[(truth * 7 + 3) % n]!;
    let chance = 1;
    let doubted = false;
    cases.forEach((c, k) => {
      let pass = 0;
      for (let d = 0; d < n; d++) {
        const told = seen - reading[d]! - m.sd * noise[d]!;
        let kept = true;
        for (let l = 0; l < c.margins.length && kept; l++) kept = c.margins[l]![d]! + gains[k]![l]! * told >= 0;
        if (kept) pass++;
      }
      chance = Math.min(chance, pass / n);
      if (c.outside && !shows(c)) doubted = true;
    });
    if (chance >= 1 - confidence && (chance < confidence || doubted)) unsure++;
  }
  return { stillUnsure: unsure / PRETENDED, explained };
}

/** Whether a limit is kept in some draws and missed in others, so that it is worth knowing better. */
function isInDoubt(margin: Float64Array, confidence: number): boolean {
  const kept = margin.reduce((n, x) => n + (x >= 0 ? 1 : 0), 0) / margin.length;
  return kept < confidence && kept >= 1 - confidence;
}
