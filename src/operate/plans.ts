import type { Job } from '../job/types.ts';
import type { Warning } from '../issues/result.ts';

/** One way the gates may stand. */
export type Plan = { name: string; open: ReadonlySet<string>; required: boolean };

/** Name of the plan with every gate open; it counts for the motor even where nobody asked for it. */
export const ALL_TOGETHER = 'all together';

/** With more pick-ups than this and no plans given, only all together is judged. */
const MOST_PICKUPS_ONE_BY_ONE = 40;

/** The job's gate plans, or, where none are given, each pick-up alone and then all together. */
export function gatePlans(job: Job): { plans: Plan[]; everyGateOpen: Plan; warnings: Warning[] } {
  const pickups = job.ductwork.sections.filter((s) => s.pickup);
  const ungated = pickups.filter((s) => !s.gate).map((s) => s.id);
  const everyGateOpen: Plan = { name: ALL_TOGETHER, open: new Set(pickups.map((s) => s.id)), required: false };
  const open = (ids: readonly string[]) => new Set([...ids, ...ungated]);
  if (job.gatePlans) {
    const plans = job.gatePlans.map((p) => ({ name: p.name, open: open(p.open), required: p.required ?? true }));
    return { plans, everyGateOpen: plans.find((p) => p.open.size === pickups.length) ?? everyGateOpen, warnings: [] };
  }
  if (pickups.length > MOST_PICKUPS_ONE_BY_ONE) {
    const text = `${pickups.length} machines and no gate plans: only all together is judged. Say in gatePlans which gates open together.`;
    return {
      plans: [{ ...everyGateOpen, required: true }],
      everyGateOpen,
      warnings: [{ code: 'only-all-together', text, path: '/gatePlans' }],
    };
  }
  const alone = pickups.map((s) => ({ name: `${s.id} alone`, open: open([s.id]), required: true }));
  return { plans: [...alone, everyGateOpen], everyGateOpen, warnings: [] };
}
