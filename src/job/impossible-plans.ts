import { pointer } from '../issues/result.ts';
import type { Issue } from '../issues/result.ts';
import { nearestName } from './nearest-name.ts';
import type { Ductwork, GatePlan } from './types.ts';

function unknownPickups(
  plan: GatePlan,
  planPath: string,
  pickups: readonly string[],
  sections: ReadonlySet<string>,
): Issue[] {
  return plan.open.flatMap((id, index) => {
    if (pickups.includes(id)) return [];
    const near = nearestName(id, pickups);
    const why = sections.has(id) ? 'is a section without a pick-up' : 'is not in the ducts';
    const hint = near ? `did you mean "${near}"?` : 'only pick-ups can be opened.';
    const message = `Gate plan "${plan.name}" opens "${id}", which ${why}; ${hint}`;
    return [{ code: 'unknown-pickup' as const, path: planPath + pointer('open', index), message }];
  });
}

/**
 * Gate plans that open what is no pick-up, or share a name.
 * @param plans     the job's gate plans
 * @param ductwork  the ducts they are about
 */
export function impossiblePlans(plans: readonly GatePlan[], ductwork: Ductwork): Issue[] {
  const sections = new Set(ductwork.sections.map(({ id }) => id));
  const pickups = ductwork.sections.filter(({ pickup }) => pickup != null).map(({ id }) => id);
  return plans.flatMap((plan, index) => {
    const path = pointer('gatePlans', index);
    const isTwin = plans.findIndex(({ name }) => name === plan.name) < index;
    const message = `Two gate plans are called "${plan.name}": give each a name of its own.`;
    const twin: Issue[] = isTwin ? [{ code: 'duplicate-id', path: path + pointer('name'), message }] : [];
    return [...twin, ...unknownPickups(plan, path, pickups, sections)];
  });
}
