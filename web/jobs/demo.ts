import type { Job } from '../../src/job/types.ts';
import { openNew } from '../state/bench.ts';
import { go } from '../state/route.ts';

const DEMOS = import.meta.glob<{ default: Job }>('../../fixtures/jobs/school-furniture.json');

/** Puts a fresh copy of the demo on the bench; whoever changed the last copy keeps it under "my jobs". */
export async function openDemo(): Promise<void> {
  const load = Object.values(DEMOS)[0];
  if (!load) return;
  const demo = (await load()).default;
  openNew(structuredClone(demo));
  go({ page: 'match' });
}
