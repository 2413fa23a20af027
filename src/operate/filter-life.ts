import type { Element } from '../duct/index.ts';
import type { Job } from '../job/types.ts';

/**
 * Hours until the filters hold all the dust they can, at the job's dust rate: what they hold together over what reaches them in an hour.
 * Where branches bring cleaned and uncleaned air, all dust is taken to come the dirtiest way.
 * @returns null without filters, dust rate, what one filter holds, or what a cyclone on the way catches: nobody can tell it from a size
 * Source: definition, mass over mass flow.
 */
export function filterLife_h({ ductwork, dustRate_kg_h }: Job): number | null {
  if (dustRate_kg_h == null || !(dustRate_kg_h > 0)) return null;
  const { sections } = ductwork;
  const into = (target: string) => sections.filter((s) => s.into === target);
  let life: number | null = null;
  let unknown = false;
  /** share of the dust still in the air at the end of a run; counts what its filters would hold on the way */
  const through = (elements: readonly Element[], arriving: number): number => {
    let share = arriving;
    for (const e of elements) {
      if (e.kind === 'cyclone') {
        if (e.efficiency == null) unknown = true;
        else share *= 1 - e.efficiency;
      }
      if (e.kind !== 'filters') continue;
      if (e.dustCapacity_kg == null) unknown = true;
      else if (share > 0) {
        const hours = (e.count * e.dustCapacity_kg) / (dustRate_kg_h * share);
        life = life === null ? hours : Math.min(life, hours);
      }
      share = 0;
    }
    return share;
  };
  const leaving = (target: string): number =>
    into(target).reduce((most, s) => Math.max(most, through(s.elements, arrivingAt(s.id))), 0);
  const arrivingAt = (id: string): number => (into(id).length === 0 ? 1 : leaving(id));
  through(ductwork.discharge ?? [], leaving('blower'));
  return unknown ? null : life;
}
