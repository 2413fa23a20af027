import type { BlowerResult, Case, StateName, StateResult, Verdict } from '../../src/assessment.ts';
import type { MatchTexts } from '../texts/en-match.ts';
import { capital, listed } from './names.ts';
import type { Names } from './names.ts';
import type { PlanView } from './plans.ts';

/** Longest verdict that still stands in three lines of a phone; beyond it machines are counted, not named. */
const LONGEST = 84;

/**
 * The verdict of one blower as one craftsman says it to another: how many machines at a time, then which.
 * What would break or burn (wheel, drum, motor) is said before anything about air, and a reading that must be wrong before all.
 */
export function verdictSentence(
  plans: readonly PlanView[],
  blower: BlowerResult,
  names: Names,
  texts: MatchTexts,
): string {
  const t = texts.sentence;
  if (blower.reasons.some(({ code }) => code === 'readings-doubtful')) return t.readingWrong;
  const wrong = wrongFirst(plans, blower);
  const air = airSentence(plans, names, texts);
  if (!wrong) return air;
  if (wrong.verdict === 'no') {
    const airEnough = plans.filter((plan) => plan.required).every((plan) => airVerdict(plan.worst) === 'yes');
    return `${t.fails[wrong.state]} ${airEnough ? t.airWouldDo : air}`;
  }
  const both = `${air} ${t.doubts[wrong.state]}`;
  return both.length <= LONGEST ? both : `${lead(plans, texts)} ${t.doubts[wrong.state]}`;
}

function airSentence(plans: readonly PlanView[], names: Names, texts: MatchTexts): string {
  const t = texts.sentence;
  const singles = plans.filter((plan) => plan.open.length === 1);
  const several = plans.filter((plan) => plan.open.length > 1);
  const only = singles[0];
  if (singles.length === 0) return byPlan(several, texts);
  const all = (verdict: Verdict, list: readonly PlanView[]) =>
    list.length > 0 && list.every((plan) => plan.verdict === verdict);
  if (all('yes', several) && all('yes', singles)) return t.everything;
  if (singles.length === 1 && several.length === 0 && only)
    return { yes: t.onlyYes, unsure: t.onlyUnsure, no: t.onlyNo }[only.verdict](names.machine(only.open[0]!));
  const together = several.length === 1 && singles.length > 1 ? ` ${aboutTogether(several[0]!, names, texts)}` : '';
  if (all('yes', singles))
    return singles.length === 1
      ? `${t.onlyYes(names.machine(only!.open[0]!))}${together}`
      : t.oneAtATime + (all('no', several) ? '' : together);
  const better = several.find((plan) => plan.verdict !== 'no');
  if (all('no', singles)) return better ? `${t.noneAlone} ${aboutTogether(better, names, texts)}` : t.none;
  const start = lead(plans, texts);
  if (all('unsure', singles)) return start;
  const spelled = `${start} ${capital(named(singles, names, texts))}${t.end}`;
  return spelled.length <= LONGEST ? spelled : `${start} ${capital(counted(singles, texts))}${t.end}`;
}

const lead = (plans: readonly PlanView[], texts: MatchTexts): string =>
  plans.some((plan) => plan.open.length === 1 && plan.verdict === 'yes') ? texts.sentence.mixed : texts.sentence.unsure;

const GROUPS = ['yes', 'unsure', 'no'] as const;

function named(plans: readonly PlanView[], names: Names, texts: MatchTexts): string {
  const t = texts.sentence;
  const say = { yes: t.yes, unsure: t.notSure, no: t.no };
  return grouped(plans)
    .map(({ verdict, list }) =>
      say[verdict](
        listed(
          list.map((plan) => names.machine(plan.open[0]!)),
          texts,
        ),
      ),
    )
    .join(t.comma);
}

function counted(plans: readonly PlanView[], texts: MatchTexts): string {
  const t = texts.sentence;
  const of = String(plans.length);
  const say = { yes: (n: string) => t.countYes(n, of), unsure: t.countNotSure, no: t.countNo };
  return grouped(plans)
    .map(({ verdict, list }) => say[verdict](String(list.length)))
    .join(t.comma);
}

const grouped = (plans: readonly PlanView[]) =>
  GROUPS.map((verdict) => ({ verdict, list: plans.filter((plan) => plan.verdict === verdict) })).filter(
    ({ list }) => list.length > 0,
  );

function aboutTogether(plan: PlanView, names: Names, texts: MatchTexts): string {
  const t = texts.sentence;
  const who = texts.planWords[plan.name] ?? capital(texts.together(listed(plan.open.map(names.machine), texts)));
  return `${{ yes: t.yes, unsure: t.notSure, no: t.no }[plan.verdict](who)}${t.end}`;
}

/** Where no plan opens a single machine the plans' own names tell them apart. */
function byPlan(plans: readonly PlanView[], texts: MatchTexts): string {
  const t = texts.sentence;
  const say = { yes: t.yes, unsure: t.notSure, no: t.no };
  if (plans.every((plan) => plan.verdict === 'yes')) return t.everything;
  const title = (plan: PlanView) => texts.planWords[plan.name] ?? plan.name;
  return `${capital(
    grouped(plans)
      .map(({ verdict, list }) => say[verdict](listed(list.map(title), texts)))
      .join(t.comma),
  )}${t.end}`;
}

/** Does the air suffice and carry the dust, whatever the motor says? */
export function airVerdict(one: Case): Verdict {
  if (!one.operatingPoint || one.sections.some((section) => section.judged && !section.ok)) return one.verdict;
  const chance = Math.min(1, ...one.pickups.map((pickup) => pickup.probability));
  return chance >= 0.95 ? 'yes' : chance < 0.05 ? 'no' : 'unsure';
}

/** The state that breaks or burns before the air matters, the worst first; null where the air is the question. */
function wrongFirst(plans: readonly PlanView[], blower: BlowerResult): { state: StateName; verdict: Verdict } | null {
  const bad = blower.states
    .filter((state) => state.ok !== null && state.state !== 'loaded-filters')
    .map((state) => ({ state: state.state, verdict: stateVerdict(state), probability: state.probability ?? 0 }))
    .filter((state) => state.verdict !== 'yes')
    .sort((a, b) => a.probability - b.probability);
  const airFails = plans.filter((plan) => plan.required).some((plan) => airVerdict(plan.worst) === 'no');
  return airFails ? null : (bad[0] ?? null);
}

/** A state's verdict: its chance if it has one, else simply inside or outside its limit. */
export function stateVerdict({ ok, probability }: StateResult): Verdict {
  if (probability === null) return ok ? 'yes' : 'no';
  return probability >= 0.95 ? 'yes' : probability < 0.05 ? 'no' : 'unsure';
}
