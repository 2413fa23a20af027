import type { GatePlan, Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';

type Standing = { name: string; open: readonly string[] };

const sameSet = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((id) => b.includes(id));

/** The plans a job without plans of its own is judged by: each machine alone, then all together. */
export function usualPlans(job: Job): GatePlan[] {
  const ids = job.ductwork.sections.filter((section) => section.pickup).map((section) => section.id);
  return [
    ...ids.map((id) => ({ name: `${id} alone`, open: [id] })),
    { name: 'all together', open: ids, required: false },
  ];
}

const nameOf = (open: readonly string[]): string =>
  open.length === 0 ? 'all shut' : open.length === 1 ? `${open[0]} alone` : open.join(' + ');

/**
 * One gate pulled or pushed while a plan is looked at: answers which plan stands so now, and the job with that plan in it
 * if there was none. Machines without a gate are open in every plan and tell none apart.
 */
export function toggleGate(job: Job, plan: Standing, gate: string): { plan: string; edited: Edited | null } {
  const gates = plan.open.includes(gate) ? plan.open.filter((id) => id !== gate) : [...plan.open, gate];
  return standGates(job, plan, gates);
}

/** The gates put as `gates` says while a plan is looked at. A plan tried this way is not required, and trying on from it changes it in place. */
export function standGates(
  job: Job,
  plan: Standing,
  gates: readonly string[],
): { plan: string; edited: Edited | null } {
  const gated = new Set(
    job.ductwork.sections.filter((section) => section.pickup && section.gate).map((section) => section.id),
  );
  const open = gates.filter((id) => gated.has(id));
  const plans = job.gatePlans ?? usualPlans(job);
  const known = plans.find((one) =>
    sameSet(
      one.open.filter((id) => gated.has(id)),
      open,
    ),
  );
  if (known) return { plan: known.name, edited: null };
  const tried: GatePlan = { name: nameOf(open), open, required: false };
  const trying = plans.findIndex(
    (one) => one.name === plan.name && one.required === false && one.name === nameOf(one.open) && one.open.length !== 1,
  );
  const gatePlans = trying < 0 ? [...plans, tried] : plans.with(trying, tried);
  return { plan: tried.name, edited: { job: { ...job, gatePlans }, note: 'gatePlan' } };
}

/** Gives a section a gate, or takes it away. */
export function setGate(job: Job, id: string, has: boolean): Edited {
  const sections = job.ductwork.sections.map((section) => {
    if (section.id !== id) return section;
    const { gate, ...rest } = section;
    return has ? { ...rest, gate: gate ?? {} } : rest;
  });
  return { job: { ...job, ductwork: { ...job.ductwork, sections } }, note: 'gate' };
}

/** Must this plan work, or is it only shown? */
export function setRequired(job: Job, name: string, required: boolean): Edited {
  const plans = job.gatePlans ?? usualPlans(job);
  return {
    job: { ...job, gatePlans: plans.map((plan) => (plan.name === name ? { ...plan, required } : plan)) },
    note: 'gatePlan',
  };
}

export function removePlan(job: Job, name: string): Edited {
  const plans = (job.gatePlans ?? usualPlans(job)).filter((plan) => plan.name !== name);
  return { job: { ...job, gatePlans: plans }, note: 'gatePlan' };
}
