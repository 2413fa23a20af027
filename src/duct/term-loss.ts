import type { Air } from '../air/air.ts';
import { straightPipeLoss } from '../pipe/index.ts';
import type { LossTerm } from './elements/element.ts';

/** Total pressure one element loses at a flow [Pa]; 0 at no flow. @param flow_m3_s flow through it [m3/s], ≥ 0 */
export function termLoss_Pa(term: LossTerm, flow_m3_s: number, air: Air): number {
  if (term.law === 'friction') return straightPipeLoss(term, flow_m3_s, air);
  if (term.law === 'velocity-pressure') {
    const velocity_m_s = flow_m3_s / term.area_m2;
    return (term.k * air.density_kg_m3 * velocity_m_s * velocity_m_s) / 2;
  }
  return term.pressure_Pa * (flow_m3_s / term.flow_m3_s) ** term.exponent;
}
