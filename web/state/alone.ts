import type { Assessment, Case, Interval } from '../../src/assessment.ts';
import type { Blower, Job } from '../../src/job/types.ts';

/** The one question all finds are compared by: the machine that is hardest to serve, and the gates it runs with. */
export type Hardest = { planName: string; open: string[]; pickupId: string; requiredFlow_m3_s: number | null };

/** What one piece of evidence, taken alone, says this machine will get. */
export type AloneFlow = { flow_m3_s: number; flow95_m3_s: Interval };

const loadedFirst = (a: Case, b: Case): number =>
  Number(b.filterState === 'loaded') - Number(a.filterState === 'loaded');

/** Among the required plans of the best blower: the one least likely to pass, and in it the open machine worst off. */
export function hardestOf(assessment: Assessment): Hardest | null {
  const best = [...assessment.blowers].sort((a, b) => a.rank - b.rank)[0];
  if (!best) return null;
  const cases = assessment.cases.filter((c) => c.blowerId === best.blowerId && c.required);
  const worst = [...cases].sort((a, b) => a.probability - b.probability || loadedFirst(a, b))[0];
  const open = worst?.pickups.filter((p) => p.open) ?? [];
  const pickup = [...open].sort((a, b) => a.probability - b.probability)[0];
  if (!worst || !pickup) return null;
  return {
    planName: worst.gatePlan,
    open: open.map((p) => p.id),
    pickupId: pickup.id,
    requiredFlow_m3_s: pickup.requiredFlow_m3_s,
  };
}

/** A job in which a blower is known by one piece of evidence only and one gate plan is asked about. */
export function aloneJob(job: Job, blower: Blower, evidence: Blower['evidence'][number], hardest: Hardest): Job {
  return {
    ...job,
    blowers: [{ ...blower, evidence: [evidence] }],
    gatePlans: [{ name: hardest.planName, open: hardest.open, required: true }],
  };
}

/** Flow of the machine asked about with the fullest filters; null where no running point was found. */
export function flowOf(assessment: Assessment, blowerId: string, hardest: Hardest): AloneFlow | null {
  const found = assessment.cases
    .filter((c) => c.blowerId === blowerId && c.gatePlan === hardest.planName)
    .sort(loadedFirst)[0];
  const pickup = found?.operatingPoint ? found.pickups.find((p) => p.id === hardest.pickupId) : undefined;
  return pickup ? { flow_m3_s: pickup.flow_m3_s, flow95_m3_s: pickup.flow95_m3_s } : null;
}
