import { checkJob, type Job } from '../../../src/index.ts';
import { judge } from '../../../src/judge.ts';
import { invent, type Invented, type Wishes } from './invent.ts';
import type { TruePoint } from './meeting-point.ts';
import { randomFrom } from './random.ts';

export type Quantity = 'flow' | 'pressure' | 'power';
export type Judged = {
  index: number;
  plan: string;
  find: Invented;
  truth: TruePoint;
  best: Record<Quantity, number>;
  band: Record<Quantity, readonly [number, number]>;
  reasons: string[];
  warnings: string[];
};

export const QUANTITIES: readonly Quantity[] = ['flow', 'pressure', 'power'];
export const trueValue = (t: TruePoint): Record<Quantity, number> => ({
  flow: t.flow_m3_s,
  pressure: t.total_Pa,
  power: t.shaftPower_W,
});

/** Which machines are open in a plan of the default plans. */
export const openIn = (plan: string, machines: readonly string[]) =>
  plan === 'all together' ? machines : [plan.replace(' alone', '')];

export function checked(find: Invented): Job {
  const result = checkJob(JSON.parse(JSON.stringify(find.job)));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** The first machine alone, and all together where there are several: the program's band beside the truth. */
export function judged(seed: number, index: number, wishes: Wishes = {}): Judged[] {
  const find = invent(randomFrom(seed, index), wishes);
  if (find.tested === null && find.mix.startsWith('readings')) return [];
  const { cases, warnings } = judge(checked(find)).assessment;
  const plans = find.shop.machines.length > 1 ? ['m1 alone', 'all together'] : ['m1 alone'];
  return plans.flatMap((plan) => {
    const at = cases.find((c) => c.gatePlan === plan)!;
    const truth = find.truePoint(openIn(plan, find.shop.machines));
    if (truth === null || at.operatingPoint === null) return [];
    const p = at.operatingPoint;
    return [
      {
        index,
        plan,
        find,
        truth,
        best: { flow: p.flow_m3_s, pressure: p.totalPressure_Pa, power: p.shaftPower_W! },
        band: {
          flow: p.interval95.flow_m3_s,
          pressure: p.interval95.totalPressure_Pa,
          power: p.interval95.shaftPower_W!,
        },
        reasons: at.reasons.map((r) => r.code),
        warnings: warnings.map((w) => w.code),
      },
    ];
  });
}
