import type { Case } from '../assessment.ts';
import type { Job } from '../job/types.ts';
import type { Judgement } from '../judge.ts';
import { settlingOf, type Work } from '../operate/settling.ts';

/** Solves that may be spent on all cases of a job together, for a shop of twenty sections; a third of a second at most. */
const WORK = 1500;

/**
 * The cases of a judgement, each with where dust settles in it and the least that would mend that.
 * What the required plans need comes first, should the work run out.
 */
export function withMends(job: Job, { assessment, blowers }: Judgement): Case[] {
  const work: Work = { left: WORK };
  const candidates = new Map(blowers.map(({ candidate }) => [candidate.blower.id, candidate]));
  const settles = (one: Case) =>
    one.operatingPoint !== null && (!one.discharge.ok || one.sections.some((section) => section.judged && !section.ok));
  const settling = new Map<Case, Case['settling']>();
  const inOrder = assessment.cases.filter(settles).sort((a, b) => Number(b.required) - Number(a.required));
  for (const one of inOrder) {
    const open = new Set(one.pickups.filter((pickup) => pickup.open).map(({ id }) => id));
    const gates = { open, filterState: one.filterState };
    settling.set(one, settlingOf(job, candidates.get(one.blowerId)!, gates, work));
  }
  return assessment.cases.map((one) => ({ ...one, settling: settling.get(one) ?? null }));
}
