import { VerdictMark } from '../drawings/marks.tsx';
import type { MatchTexts } from '../texts/en-match.ts';
import type { Names } from './names.ts';
import { planTitle } from './plans.ts';
import type { PlanView } from './plans.ts';

type Props = {
  plans: readonly PlanView[];
  chosen: PlanView;
  names: Names;
  texts: MatchTexts;
  verdictWords: Record<PlanView['verdict'], string>;
  onChoose: (name: string) => void;
};

/** One cell per gate plan with its mark; a tap chooses what everything else on the page is about. */
export function PlanRow({ plans, chosen, names, texts, verdictWords, onChoose }: Props) {
  return (
    <div
      class={plans.length > 4 ? 'plans many' : 'plans'}
      role="radiogroup"
      aria-label={texts.choose.plan}
      style={{ '--cells': Math.min(plans.length, 4) }}
    >
      {plans.map((plan) => (
        <button
          key={plan.name}
          type="button"
          role="radio"
          aria-checked={plan === chosen}
          aria-label={`${planTitle(plan, names, texts)}: ${verdictWords[plan.verdict]}`}
          onClick={() => onChoose(plan.name)}
        >
          <VerdictMark verdict={plan.verdict} />
          <span>{planTitle(plan, names, texts)}</span>
        </button>
      ))}
    </div>
  );
}
