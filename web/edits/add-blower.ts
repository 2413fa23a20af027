import type { Family } from '../../src/fan/families.ts';
import type { Blower, Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';

export type NewBlower = { family: Family; ratedPower_W: number; driveKind: 'belt' | 'direct'; powerAsTyped: string };

/** A new candidate, known by its wheel and its plate's power only: a rough curve with a wide band until more is said. */
export function addBlower(job: Job, data: NewBlower): Edited & { blowerId: string } {
  const blowerId = freeId(job);
  const blower: Blower = {
    id: blowerId,
    wheel: { family: data.family },
    drive: { kind: data.driveKind },
    motor: { ratedPower_W: data.ratedPower_W },
    evidence: [{ kind: 'wheel' }],
  };
  const asTyped = { ...job.asTyped, [`/blowers/${job.blowers.length}/motor/ratedPower_W`]: data.powerAsTyped };
  return { job: { ...job, blowers: [...job.blowers, blower], asTyped }, note: 'addBlower', blowerId };
}

function freeId(job: Job): string {
  const taken = new Set(job.blowers.map((blower) => blower.id));
  let n = job.blowers.length + 1;
  while (taken.has(`b${n}`)) n += 1;
  return `b${n}`;
}
