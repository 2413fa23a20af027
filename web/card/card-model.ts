import type { Assessment, BlowerResult, Case } from '../../src/assessment.ts';
import { hoodSuction_Pa } from '../../src/duct/index.ts';
import type { Blower, Job } from '../../src/job/types.ts';
import { planViews } from '../match/plans.ts';
import type { PlanView } from '../match/plans.ts';

/** Rules that still stand in letters a hand high; the rest is in the program. */
const MOST_RULES = 6;
/** More gates than this cannot be told apart in a row of small pictures. */
export const MOST_GATES = 6;

export type Rule = { plan: PlanView; why: 'yes' | 'unsure' | 'short' | 'settles' | 'motor' | 'no' };

/** What the printed page says, in numbers; words and units are put to them where it is drawn. */
export type CardModel = {
  rules: Rule[];
  /** ways the gates may stand that found no room on the page */
  left: number;
  /** pick-ups in the order of the job */
  machines: string[];
  /** each machine alone: its air, and what a tube right behind its hood then shows, for checking the finished shop */
  air: { id: string; flow95_m3_s: [number, number]; needed_m3_s: number | null; tube_Pa: number | null }[];
  filters: { count: number; clean_Pa: number; loaded_Pa: number } | null;
  amps: {
    single_A: [number, number] | null;
    all_A: number | null;
    low: { volts: number; amps: number } | null;
    plate_A: number | null;
  };
  pulleys: { motor_m: number; wheel_m: number } | null;
  wheel: { speed_rpm: number; limit_rpm: number | null } | null;
};

export function cardModel(job: Job, assessment: Assessment, blower: Blower, result: BlowerResult): CardModel {
  const plans = planViews(assessment, blower.id);
  const asked = [...plans.filter((plan) => plan.required), ...plans.filter((plan) => !plan.required)];
  const singles = plans.filter((plan) => plan.open.length === 1);
  return {
    rules: asked.slice(0, MOST_RULES).map((plan) => ({ plan, why: whyOf(plan) })),
    left: Math.max(0, asked.length - MOST_RULES),
    machines: job.ductwork.sections.filter((section) => section.pickup).map((section) => section.id),
    air: singles.flatMap((plan) => {
      const pickup = (plan.loaded ?? plan.clean)?.pickups.find((one) => one.open);
      if (!pickup) return [];
      const { id, flow_m3_s, flow95_m3_s, requiredFlow_m3_s } = pickup;
      const elements = job.ductwork.sections.find((section) => section.id === id)?.elements ?? [];
      const tube_Pa = flow_m3_s === null ? null : hoodSuction_Pa(elements, flow_m3_s, assessment.air);
      return [{ id, flow95_m3_s, needed_m3_s: requiredFlow_m3_s, tube_Pa }];
    }),
    filters: filtersOf(job, singles),
    amps: ampsOf(job, blower, plans, singles),
    pulleys: pulleysOf(blower),
    wheel: wheelOf(plans, result),
  };
}

function whyOf(plan: PlanView): Rule['why'] {
  if (plan.verdict !== 'no') return plan.verdict;
  const one = plan.worst;
  const tooLittle = one.pickups.some((pickup) => pickup.open && !pickup.ok);
  if (tooLittle) return 'short';
  if (one.sections.some((section) => section.judged && !section.ok)) return 'settles';
  return (one.motor.probabilityWithinRating ?? 1) < 0.5 ? 'motor' : 'no';
}

/** What the filters eat when new and when full, with one machine open: the least and the most a tube across them should show. */
function filtersOf(job: Job, singles: readonly PlanView[]): CardModel['filters'] {
  const elements = [...job.ductwork.sections.flatMap((section) => section.elements), ...(job.ductwork.discharge ?? [])];
  const count = elements.reduce((sum, element) => sum + (element.kind === 'filters' ? element.count : 0), 0);
  const eaten = (one: Case | null) => one?.budget.find((part) => part.part === 'filters')?.pressure_Pa ?? null;
  const clean = singles.flatMap((plan) => eaten(plan.clean) ?? []);
  const loaded = singles.flatMap((plan) => eaten(plan.loaded) ?? []);
  if (count === 0 || clean.length === 0 || loaded.length === 0) return null;
  return { count, clean_Pa: Math.max(...clean), loaded_Pa: Math.min(...loaded) };
}

function ampsOf(job: Job, blower: Blower, plans: readonly PlanView[], singles: readonly PlanView[]): CardModel['amps'] {
  const current = (one: Case | null) => one?.motor.current_A ?? null;
  const cases = (list: readonly PlanView[]) => list.flatMap((plan) => [plan.clean, plan.loaded]);
  const single = cases(singles).flatMap((one) => current(one) ?? []);
  const most = plans.reduce<PlanView | null>((a, b) => (a && a.open.length >= b.open.length ? a : b), null);
  const low = cases(plans).flatMap((one) => one?.motor.currentAtLowestVoltage_A ?? []);
  const volts = job.supply.lowestVoltage_V ?? null;
  return {
    single_A: single.length > 0 ? [Math.min(...single), Math.max(...single)] : null,
    all_A: most && most.open.length > 1 ? current(most.clean) : null,
    low: volts !== null && low.length > 0 ? { volts, amps: Math.max(...low) } : null,
    plate_A: blower.motor.current_A ?? null,
  };
}

function pulleysOf({ drive }: Blower): CardModel['pulleys'] {
  if (drive.kind !== 'belt' || !drive.motorPulleyDiameter_m || !drive.wheelPulleyDiameter_m) return null;
  return { motor_m: drive.motorPulleyDiameter_m, wheel_m: drive.wheelPulleyDiameter_m };
}

/** Speed of the wheel, and the speed at which its rim reaches the safe limit. */
function wheelOf(plans: readonly PlanView[], result: BlowerResult): CardModel['wheel'] {
  const speed_rpm = plans.map((plan) => plan.worst.operatingPoint?.speed_rpm ?? null).find((speed) => speed !== null);
  if (!speed_rpm) return null;
  const tip = result.states.find((state) => state.state === 'tip-speed');
  const limit_rpm = tip?.value && tip.limit ? (speed_rpm * tip.limit) / tip.value : null;
  return { speed_rpm, limit_rpm };
}
