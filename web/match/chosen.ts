import { batch, computed, signal } from '@preact/signals';
import type { Case } from '../../src/assessment.ts';
import type { FilterState } from '../../src/duct/elements/element.ts';
import { answered } from '../state/assessment.ts';
import { job } from '../state/job.ts';
import { mostAsked, planViews } from './plans.ts';

/** What ducts, match and card look at together: one blower, one gate plan, one state of the filters. */

export const wantedBlower = signal<string | null>(null);
const wantedPlan = signal<string | null>(null);
/** what was looked at before: it stays in sight until the answer for a plan just made is there */
const heldPlan = signal<string | null>(null);
export const wantedFilters = signal<FilterState>('loaded');

/** The blower that is looked at: the one asked for, else the best. */
export const shownBlower = computed(() => {
  const blowers = answered.value?.assessment.blowers ?? [];
  return (
    blowers.find((blower) => blower.blowerId === wantedBlower.value) ??
    [...blowers].sort((a, b) => a.rank - b.rank)[0] ??
    null
  );
});

export const shownPlans = computed(() => {
  const now = answered.value;
  return now && shownBlower.value ? planViews(now.assessment, shownBlower.value.blowerId) : [];
});

const planNamed = (name: string | null) => shownPlans.value.find((plan) => plan.name === name);

/** The gate plan that is looked at: the one asked for, else where the question is. */
export const shownPlan = computed(
  () => planNamed(wantedPlan.value) ?? planNamed(heldPlan.value) ?? mostAsked(shownPlans.value),
);

export function choosePlan(name: string): void {
  batch(() => {
    heldPlan.value = shownPlan.peek()?.name ?? null;
    wantedPlan.value = name;
  });
}

/** The gates as they stand now: as in the plan asked for, even while its answer is being worked out. */
export const gatesNow = computed<{ name: string; open: ReadonlySet<string> }>(() => {
  const asked = planNamed(wantedPlan.value);
  const made = asked ? null : job.value.gatePlans?.find((plan) => plan.name === wantedPlan.value);
  const plan = made ?? shownPlan.value;
  return {
    name: plan?.name ?? '',
    open: new Set(plan?.open ?? job.value.ductwork.sections.map((section) => section.id)),
  };
});

export const hasFilterStates = computed(() => shownPlans.value.some((plan) => plan.loaded));

/** The one case the ducts are drawn for. */
export const shownCase = computed<Case | null>(() => {
  const plan = shownPlan.value;
  if (!plan) return null;
  return plan[wantedFilters.value] ?? plan.loaded ?? plan.clean;
});
