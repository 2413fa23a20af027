import type { Mend } from '../../src/assessment.ts';
import { resizedRun } from '../../src/duct/index.ts';
import type { Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { elementsOf, elementsPointer, withElements } from './duct-run.ts';
import { typedWithout } from './duct-typed.ts';

/** Builds runs in the sizes of a mend; what people typed for the widths that change no longer holds and is forgotten. */
export function narrowRuns(job: Job, sizes: Mend['sizes']): Edited {
  const changed = new Set<string>();
  let next = job;
  for (const run of new Set(sizes.map(({ id }) => id))) {
    const widths = new Map(sizes.filter(({ id }) => id === run).map(({ from_m, to_m }) => [from_m, to_m]));
    const before = elementsOf(next, run);
    const elements = resizedRun(before, widths);
    elements.forEach((element, i) => {
      if (element !== before[i]) changed.add(`${elementsPointer(job, run)}/${i}/diameter_m`);
    });
    next = withElements(next, run, elements);
  }
  return { job: { ...next, asTyped: typedWithout(job, (at) => changed.has(at)) }, note: 'section' };
}
