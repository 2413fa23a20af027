import type { Ductwork } from '../../src/job/types.ts';
import type { Names } from '../match/names.ts';
import { between, DESK, layout, PHONE, TIGHT } from './layout.ts';
import type { Metrics, Sheet } from './layout.ts';

/** Steps between the sizes, largest first. */
const STEPS = [1, 0.85, 0.7, 0.55, 0.4, 0.25, 0];

/** How far a phone's drawing may be shrunk as a whole before its lettering gets too small to read. */
const SMALLEST_SHRINK = 0.925;

/** With more machines than this no size fits, so none is tried. */
const MOST_FITTED = 16;

export type Fitted = { sheet: Sheet; metrics: Metrics; shrink: number };

/** The largest drawing that fits the width; a shop too long for any is drawn at a readable size and scrolls. */
export function fitted(job: Ductwork, names: Names, width: number, wide: boolean): Fitted {
  const ductwork = inPageWords(job, names);
  const [small, large] = wide ? [{ ...PHONE, wayOut: 'wall' as const }, DESK] : [TIGHT, PHONE];
  const machines = ductwork.sections.filter((section) => section.pickup).length;
  for (const step of machines > MOST_FITTED ? [] : STEPS) {
    const metrics = between(small, large, step);
    const sheet = layout(ductwork, metrics);
    const least = step === 0 && !wide ? SMALLEST_SHRINK : 1;
    if (sheet.width * least <= width) return { sheet, metrics, shrink: Math.min(1, width / sheet.width) };
  }
  const metrics = wide ? small : PHONE;
  return { sheet: layout(ductwork, metrics), metrics, shrink: 1 };
}

/** The same ducts with their machines called as the page calls them. */
const inPageWords = (ductwork: Ductwork, names: Names): Ductwork => ({
  ...ductwork,
  sections: ductwork.sections.map((section) =>
    section.pickup ? { ...section, pickup: { ...section.pickup, machine: names.machine(section.id) } } : section,
  ),
});
