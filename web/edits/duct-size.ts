import type { Job } from '../../src/job/types.ts';
import type { Edited } from '../state/job.ts';
import { elementsOf, elementsPointer, withElements } from './duct-run.ts';
import { typedWithout } from './duct-typed.ts';

/** Gives every piece of a run that was `from_m` wide another inside diameter; pieces of other widths stay as they are. */
export function setRunDiameter(job: Job, run: string, from_m: number, to_m: number): Edited {
  const pointer = elementsPointer(job, run);
  const changed = new Set<string>();
  const same = (diameter_m: number) => Math.abs(diameter_m - from_m) < 1e-6;
  const elements = elementsOf(job, run).map((element, index) => {
    if (!('diameter_m' in element) || !same(element.diameter_m)) return element;
    changed.add(`${pointer}/${index}/diameter_m`);
    return { ...element, diameter_m: to_m };
  });
  if (changed.size === 0) return { job, note: 'section' };
  return {
    job: { ...withElements(job, run, elements), asTyped: typedWithout(job, (at) => changed.has(at)) },
    note: 'section',
  };
}
