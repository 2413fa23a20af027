import type { Assessment } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { JudgedBlower } from '../judge.ts';
import type { ChangeSituation } from './change.ts';
import { shortfallOf, speedRatios, type Yardstick } from './shortfall.ts';

/** A blower that gives less than this share of what a machine needs is beyond any of these changes. Estimated. */
const HOPELESS = 0.45;
/** Margin below which a pipe's speed counts as slow, in standard deviations of the flow. */
const SLOW = 2;

/** Whether changes are worth looking for at all: the blower runs in these ducts and gives a fair share of what is needed. */
export function worthChanging(assessment: Assessment): boolean {
  const required = assessment.cases.filter((c) => c.required);
  if (required.some((c) => c.operatingPoint === null)) return false;
  const shares = required.flatMap((c) =>
    c.pickups.filter((p) => p.open && p.requiredFlow_m3_s).map((p) => p.flow_m3_s / p.requiredFlow_m3_s!),
  );
  return Math.min(1, ...shares) >= HOPELESS;
}

/**
 * What falls short in a judged job, and where.
 * @param assessment of this blower alone
 * @param index place of the blower in the job
 */
export function situationOf(
  job: Job,
  index: number,
  judged: JudgedBlower,
  assessment: Assessment,
  by: Yardstick,
): ChangeSituation {
  const lacking = shortfallOf(assessment, by);
  const needsAir = lacking.flow > 0 || lacking.speed > 0;
  const place = new Map(job.ductwork.sections.map((s, i) => [s.id, i]));
  const short = new Set<number>();
  const slow = new Set<number>();
  for (const c of assessment.cases) {
    if (!c.required) continue;
    const wanted = Math.exp(SLOW * by.flow);
    // narrower pipes also bring the blower back to flows at which somebody knows its curve
    const outside = c.reasons.some((r) => r.code === 'outside-evidence');
    const here = c.sections.filter(
      (s) => s.judged && s.velocity_m_s !== null && (outside || s.velocity_m_s < wanted * (s.minimumVelocity_m_s ?? 0)),
    );
    for (const { id } of here) slow.add(place.get(id)!);
    const hungry = c.pickups.some((p) => p.open && p.requiredFlow_m3_s && p.flow_m3_s < wanted * p.requiredFlow_m3_s);
    if (!hungry && Math.min(Infinity, ...speedRatios(c)) >= wanted) continue;
    for (const p of c.pickups)
      if (p.open)
        for (let i = place.get(p.id); i !== undefined; i = place.get(job.ductwork.sections[i]!.into)) short.add(i);
  }
  return { job, index, judged, short, slow, needsAir, motorOverloaded: lacking.motor > 0 };
}
