import { effect, signal } from '@preact/signals';
import type { Assessment } from '../../src/assessment.ts';
import type { Job } from '../../src/job/types.ts';
import { aloneJob, flowOf, hardestOf, type AloneFlow } from './alone.ts';
import { answered } from './assessment.ts';
import { askWorker } from './worker.ts';

/** What each piece of evidence alone says, by `blowerId/index`; `blowerId/wheel` for the wheel that is always there. */
export const aloneFlows = signal<Record<string, AloneFlow | null>>({});

/** Works the finds out one by one behind the main answer, for as long as somebody looks at them. */
export function followEachEvidence(): () => void {
  let round = 0;
  const stop = effect(() => {
    const now = answered.value;
    round += 1;
    if (now) void workThrough(now.job, now.assessment, round, () => round);
  });
  return () => {
    round += 1;
    stop();
  };
}

async function workThrough(job: Job, assessment: Assessment, mine: number, current: () => number): Promise<void> {
  const hardest = hardestOf(assessment);
  if (!hardest) return;
  for (const blower of job.blowers) {
    const pieces = blower.evidence.map((evidence, index) => ({ evidence, key: `${blower.id}/${index}` }));
    const wheelToo = { evidence: { kind: 'wheel' as const }, key: `${blower.id}/wheel` };
    for (const { evidence, key } of [...pieces.filter((p) => p.evidence.kind !== 'wheel'), wheelToo]) {
      if (mine !== current()) return;
      const answer = await askWorker({ kind: 'judge', job: aloneJob(job, blower, evidence, hardest), points: false });
      if (mine !== current()) return;
      const flow = answer.kind === 'assessment' ? flowOf(answer.assessment, blower.id, hardest) : null;
      aloneFlows.value = { ...aloneFlows.value, [key]: flow };
    }
  }
}
