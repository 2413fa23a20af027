import { openNew } from '../state/bench.ts';
import { blankJob } from '../state/blank-job.ts';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';

/** Puts a blank job on the bench and asks for it step by step. */
export function startJob(): void {
  openNew(blankJob(texts.value.newJob.firstName));
  go({ page: 'new-job', step: 0 });
}
