import type { Job } from '../../src/job/types.ts';
import { openCopy } from '../state/bench.ts';
import { go } from '../state/route.ts';

/** Puts the demo on the bench; whoever changed the last copy keeps it under "my jobs". */
export async function openDemo(): Promise<void> {
  const demo = (await import('../../fixtures/jobs/school-furniture.json')).default as unknown as Job;
  await openCopy(demo);
  go({ page: 'match' });
}
