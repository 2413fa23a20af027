import type { Assessment, Case, Verdict } from '../../src/assessment.ts';
import type { MatchTexts } from '../texts/en-match.ts';
import { capital, listed } from './names.ts';
import type { Names } from './names.ts';

/** One way the gates may stand, as one blower copes with it, over both filter states. */
export type PlanView = {
  name: string;
  /** open pick-ups */
  open: string[];
  required: boolean;
  verdict: Verdict;
  probability: number;
  clean: Case | null;
  loaded: Case | null;
  /** the filter state that decides */
  worst: Case;
};

const ORDER: Record<Verdict, number> = { no: 0, unsure: 1, yes: 2 };

/** The gate plans of one blower, in the job's order. */
export function planViews(assessment: Assessment, blowerId: string): PlanView[] {
  const byName = new Map<string, Case[]>();
  for (const one of assessment.cases) {
    if (one.blowerId === blowerId) byName.set(one.gatePlan, [...(byName.get(one.gatePlan) ?? []), one]);
  }
  return [...byName].map(([name, cases]) => {
    const worst = cases.reduce((a, b) =>
      (ORDER[b.verdict] - ORDER[a.verdict] || b.probability - a.probability) < 0 ? b : a,
    );
    return {
      name,
      open: worst.pickups.filter((pickup) => pickup.open).map((pickup) => pickup.id),
      required: worst.required,
      verdict: worst.verdict,
      probability: worst.probability,
      clean: cases.find((one) => one.filterState === 'clean') ?? null,
      loaded: cases.find((one) => one.filterState === 'loaded') ?? null,
      worst,
    };
  });
}

/** What a plan is called: its machine where only one is open, else its own name. */
export function planTitle(plan: Pick<PlanView, 'name' | 'open'>, names: Names, texts: MatchTexts): string {
  const [first] = plan.open;
  if (plan.open.length === 1 && first !== undefined) return capital(names.machine(first));
  return texts.planWords[plan.name] ?? capital(plan.name);
}

/** The plan's machines in one phrase: "the planer", "planer and saw together". */
export const planMachines = (plan: Pick<PlanView, 'name' | 'open'>, names: Names, texts: MatchTexts): string =>
  plan.open.length === 1
    ? texts.the(names.machine(plan.open[0]!))
    : (texts.planWords[plan.name]?.toLocaleLowerCase() ?? texts.together(listed(plan.open.map(names.machine), texts)));

/** The plan a page opens with: the required one least sure to pass, for there the question is. */
export function mostAsked(plans: readonly PlanView[]): PlanView | null {
  const asked = plans.filter((plan) => plan.required);
  return (asked.length > 0 ? asked : plans).reduce<PlanView | null>(
    (worst, plan) => (worst && worst.probability <= plan.probability ? worst : plan),
    null,
  );
}
