import type { Air } from '../air/air.ts';
import { circleArea_m2 } from './elements/element.ts';
import type { Element } from './elements/index.ts';
import { placeTerms } from './placed-terms.ts';
import { termLoss_Pa } from './term-loss.ts';

/**
 * What a water tube shows at a hole in the pipe right behind a hood [Pa below the room]: the air's velocity pressure and
 * the hood's entry loss. Null where the run does not begin with a hood.
 * Source: Bernoulli from the room to the tap; the hood static pressure of industrial ventilation practice.
 * @param elements the branch from the machine, in flow direction
 * @param flow_m3_s air through it [m3/s], ≥ 0
 */
export function hoodSuction_Pa(elements: readonly Element[], flow_m3_s: number, air: Air): number | null {
  const hood = elements[0];
  if (hood?.kind !== 'entry') return null;
  const velocity_m_s = flow_m3_s / circleArea_m2(hood.diameter_m);
  return placeTerms([hood], { air, filterState: 'clean' }).reduce(
    (sum, { term }) => sum + termLoss_Pa(term, flow_m3_s, air),
    (air.density_kg_m3 * velocity_m_s * velocity_m_s) / 2,
  );
}
