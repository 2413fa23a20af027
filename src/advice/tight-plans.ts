import type { Assessment } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import { gatePlans } from '../operate/plans.ts';
import { shortfallOf, type Yardstick } from './shortfall.ts';

/** Standard deviations: a plan that keeps all its limits by more is not looked at while changes are sought. Estimated. */
const AMPLE = 3.5;

/**
 * Names of the required gate plans that are short of anything or nearly so: what a search has to look at. All plans are judged again
 * before anything is advised.
 * @param assessment of one blower
 */
export function tightPlans(assessment: Assessment, by: Yardstick): ReadonlySet<string> {
  const lacking = new Map<string, number>();
  for (const c of assessment.cases) {
    if (!c.required) continue;
    const { flow, speed, other } = shortfallOf({ ...assessment, cases: [c] }, by, AMPLE);
    lacking.set(c.gatePlan, Math.max(lacking.get(c.gatePlan) ?? 0, flow, speed, other));
  }
  const names = [...lacking].sort((a, b) => b[1] - a[1]).map(([name]) => name);
  return new Set(names.filter((name, i) => i === 0 || lacking.get(name)! > 0));
}

/** A job with these gate plans alone. */
export function withPlans(job: Job, names: ReadonlySet<string>): Job {
  const { plans } = gatePlans(job);
  const kept = plans.filter((p) => names.has(p.name));
  if (kept.length === 0 || kept.length === plans.length) return job;
  const gated = job.ductwork.sections.filter((s) => s.pickup && s.gate).map((s) => s.id);
  return {
    ...job,
    gatePlans: kept.map(({ name, open, required }) => ({ name, open: gated.filter((id) => open.has(id)), required })),
  };
}
