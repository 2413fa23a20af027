import type { Element } from '../../src/duct/index.ts';
import type { Job } from '../../src/job/types.ts';

/** The run behind the blower has no section of its own; edits call it by this name. */
export const WAY_OUT = 'discharge';

/** Elements of a section, or of the way out; none where there is no such section. */
export function elementsOf(job: Job, run: string): Element[] {
  if (run === WAY_OUT) return job.ductwork.discharge ?? [];
  return job.ductwork.sections.find((section) => section.id === run)?.elements ?? [];
}

/** JSON Pointer of a run's elements. */
export function elementsPointer(job: Job, run: string): string {
  if (run === WAY_OUT) return '/ductwork/discharge';
  return `/ductwork/sections/${job.ductwork.sections.findIndex((section) => section.id === run)}/elements`;
}

export function withElements(job: Job, run: string, elements: Element[]): Job {
  if (run === WAY_OUT) return { ...job, ductwork: { ...job.ductwork, discharge: elements } };
  const sections = job.ductwork.sections.map((section) => (section.id === run ? { ...section, elements } : section));
  return { ...job, ductwork: { ...job.ductwork, sections } };
}

/** Inside diameter [m] that rules in a run: that of its first pipe, else of whatever names one. */
export function mainDiameter_m(elements: readonly Element[]): number | null {
  const pipe = elements.find((element) => element.kind === 'pipe');
  const other = elements.find((element) => 'diameter_m' in element) as { diameter_m: number } | undefined;
  return pipe?.diameter_m ?? other?.diameter_m ?? null;
}
