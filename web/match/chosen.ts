import { computed, signal } from '@preact/signals';
import type { Case } from '../../src/assessment.ts';
import type { FilterState } from '../../src/duct/elements/element.ts';
import { answered } from '../state/assessment.ts';
import { mostAsked, planViews } from './plans.ts';

/** What ducts, match and card look at together: one blower, one gate plan, one state of the filters. */

export const wantedBlower = signal<string | null>(null);
export const wantedPlan = signal<string | null>(null);
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

/** The gate plan that is looked at: the one asked for, else where the question is. */
export const shownPlan = computed(
  () => shownPlans.value.find((plan) => plan.name === wantedPlan.value) ?? mostAsked(shownPlans.value),
);

export const hasFilterStates = computed(() => shownPlans.value.some((plan) => plan.loaded));

/** The one case the ducts are drawn for. */
export const shownCase = computed<Case | null>(() => {
  const plan = shownPlan.value;
  if (!plan) return null;
  return plan[wantedFilters.value] ?? plan.loaded ?? plan.clean;
});
