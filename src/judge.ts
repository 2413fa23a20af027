import { pressureAltitude, siteAir, type Air } from './air/index.ts';
import type { Assessment } from './assessment.ts';
import { candidateOf } from './blower-curve.ts';
import type { Place } from './evidence/gather.ts';
import { ductworkWarnings, ELEMENT_KINDS, type FilterState } from './duct/index.ts';
import { pointer, type Warning } from './issues/result.ts';
import type { Job } from './job/types.ts';
import { drawCount, ductDraws, type DuctDraws } from './operate/duct-draws.ts';
import { judgeBlower, ranked } from './operate/judge-blower.ts';
import type { Candidate } from './operate/candidate.ts';
import { judgeCase, type JudgeContext, type JudgedCase } from './operate/judge-case.ts';
import { filterLife_h } from './operate/filter-life.ts';
import { gatePlans } from './operate/plans.ts';
import type { ShopFacts } from './operate/shop-facts.ts';

/** One blower judged, with what advice is made from. */
export type JudgedBlower = { candidate: Candidate; cases: JudgedCase[]; motorOnly: JudgedCase[] };

/** An assessment without advice yet, and what it rests on, blower by blower in the job's order. */
export type Judgement = { assessment: Assessment; blowers: JudgedBlower[]; facts: ShopFacts; ductDraws: DuctDraws };

/**
 * Judges a job: for every blower, gate plan and filter state where it runs, what each machine gets, what the motor carries,
 * and whether that is enough. Quick enough to follow a finger; what to measure or change next is `assess`.
 * @param job   a checked job (`checkJob`)
 * @param draws possible truths per case; left out, as many as the size of the shop allows
 * @param known blowers whose curve was worked out before with as many draws, by id: only the ducts differ
 */
export function judge(
  job: Job,
  draws = drawCount(job.ductwork.sections.length),
  known: ReadonlyMap<string, Candidate> = new Map(),
): Judgement {
  const { air, warnings: airWarnings } = siteAir(job.site);
  const { plans, everyGateOpen, warnings: planWarnings } = gatePlans(job);
  const filterStates: FilterState[] = hasFilters(job) ? ['clean', 'loaded'] : ['clean'];
  const facts = shopFacts(job);
  const context: JudgeContext = {
    ductwork: job.ductwork,
    material: job.material,
    confidence: facts.confidence,
    loadAtMost: facts.loadAtMost,
    ductDraws: ductDraws(draws, job.ductwork.sections.length),
  };

  const judged = job.blowers.map((blower, i) => {
    const place = placeOf(job, air, i);
    const candidate = known.get(blower.id) ?? candidateOf(blower, place, draws);
    const casesOf = (plan: (typeof plans)[number]) =>
      filterStates.map((state) => judgeCase(context, candidate, plan, state));
    const cases = plans.flatMap(casesOf);
    const motorOnly = plans.includes(everyGateOpen) ? [] : casesOf(everyGateOpen);
    const verdict = judgeBlower(candidate, cases, motorOnly, facts);
    return {
      cases: cases.map(({ result }) => ({ ...result, motor: { ...result.motor, worstCase: verdict.worstCase } })),
      blower: verdict.result,
      warnings: [...candidate.warnings, ...verdict.warnings],
      details: { candidate, cases, motorOnly },
    };
  });

  const assessment: Assessment = {
    air,
    cases: judged.flatMap((j) => j.cases),
    blowers: ranked(
      judged.map((j) => j.blower),
      pricesIn(job),
    ),
    warnings: unique([
      ...airWarnings,
      ...planWarnings,
      ...ductworkWarnings(job.ductwork),
      ...judged.flatMap((j) => j.warnings),
    ]),
  };
  return { assessment, blowers: judged.map((j) => j.details), facts, ductDraws: context.ductDraws };
}

/** Asking price of a blower by its id, null where none is known. Source: definition. */
export function pricesIn({ blowers }: Job): (blowerId: string) => number | null {
  const prices = new Map(blowers.map((b) => [b.id, b.price?.amount ?? null]));
  return (id) => prices.get(id) ?? null;
}

/** Where the blower at this place of the job stands, and what feeds it. */
export const placeOf = (job: Job, air: Air, index: number): Place => ({
  air,
  supply: job.supply,
  altitude_m: job.site.altitude_m ?? pressureAltitude(air.pressure_Pa),
  ambient_C: job.site.airTemperature_C ?? null,
  ductwork: job.ductwork,
  path: pointer('blowers', index),
});

const hasFilters = ({ ductwork }: Job): boolean =>
  [...ductwork.sections.flatMap((s) => s.elements), ...(ductwork.discharge ?? [])].some((e) => e.kind === 'filters');

/** Confidence and motor reserve where the job names none. Source: the job document's own example. */
const CONFIDENCE = 0.95;
const MOTOR_RESERVE = 0.1;

function shopFacts(job: Job): ShopFacts {
  const materials = job.ductwork.sections.flatMap((s) => (s.pickup ? [s.pickup.material ?? job.material] : []));
  const sparks = materials.includes('metal-grinding');
  return {
    confidence: job.requirement?.confidence ?? CONFIDENCE,
    loadAtMost: 1 - (job.requirement?.motorReserve ?? MOTOR_RESERVE),
    returnedAir: job.ductwork.exhaust === 'returned',
    sparksWithDust: sparks && materials.some((m) => m !== 'metal-grinding'),
    filterLife_h: filterLife_h(job),
    suctionVessel: job.ductwork.sections.some((s) => s.elements.some((e) => catchesDust.has(e.kind))),
  };
}

const catchesDust: ReadonlySet<string> = new Set(ELEMENT_KINDS.filter((k) => k.catchesDust).map((k) => k.kind));

function unique(warnings: readonly Warning[]): Warning[] {
  const seen = new Set<string>();
  return warnings.filter(({ code, path }) => {
    const key = `${code} ${path}`;
    return !seen.has(key) && seen.add(key);
  });
}
