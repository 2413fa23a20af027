import { pointer } from '../issues/result.ts';
import type { Issue } from '../issues/result.ts';
import { nearestName } from './nearest-name.ts';
import type { Ductwork, GatePlan } from './types.ts';

/** Looking for the name that was meant costs time; after this many wrong names it helps nobody. */
const MOST_HINTS = 20;

/**
 * Gate plans that open what is no pick-up, or share a name.
 * @param plans     the job's gate plans
 * @param ductwork  the ducts they are about
 */
export function impossiblePlans(plans: readonly GatePlan[], ductwork: Ductwork): Issue[] {
  const sections = new Set(ductwork.sections.map(({ id }) => id));
  const pickups = new Set(ductwork.sections.filter(({ pickup }) => pickup != null).map(({ id }) => id));
  const known = [...pickups];
  const issues: Issue[] = [];
  const names = new Set<string>();
  for (const [index, { name, open }] of plans.entries()) {
    if (names.has(name)) {
      const message = `Two gate plans are called "${name}": give each a name of its own.`;
      issues.push({ code: 'duplicate-id', path: pointer('gatePlans', index, 'name'), message });
    }
    names.add(name);
    for (const [place, id] of open.entries()) {
      if (pickups.has(id)) continue;
      const why = sections.has(id) ? 'is a section without a pick-up' : 'is not in the ducts';
      const near = issues.length < MOST_HINTS ? nearestName(id, known) : undefined;
      const hint = near ? `did you mean "${near}"?` : 'only pick-ups can be opened.';
      const message = `Gate plan "${name}" opens "${id}", which ${why}; ${hint}`;
      issues.push({ code: 'unknown-pickup', path: pointer('gatePlans', index, 'open', place), message });
    }
  }
  return issues;
}
