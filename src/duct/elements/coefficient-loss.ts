import type { Coefficient } from '../tables/index.ts';
import { circleArea_m2, GIVEN_K_DOUBT, type DoubtKind, type LossTerm } from './element.ts';

type CoefficientElement = { k?: number | null; count?: number | null; doubt?: number | null };

/**
 * The loss of an element that has one coefficient: a given `k` wins over the table as the centre, a given `doubt` over
 * either doubt; `count` equal ones in a row count as often.
 * @param onto  the area [m2] or the diameter [m] of the velocity that k belongs to
 * @param table what the program's own table says; undefined when it knows nothing, which only a given `k` mends
 */
export function coefficientLoss(
  element: CoefficientElement,
  doubtKind: DoubtKind,
  onto: { area_m2: number } | { diameter_m: number },
  table: () => Coefficient | undefined,
): LossTerm {
  const area_m2 = 'area_m2' in onto ? onto.area_m2 : circleArea_m2(onto.diameter_m);
  const count = element.count ?? 1;
  if (element.k != null) {
    return {
      law: 'velocity-pressure',
      k: element.k * count,
      area_m2,
      doubt: { kind: doubtKind, sd: element.doubt ?? GIVEN_K_DOUBT },
    };
  }
  const row = table();
  if (row === undefined)
    throw new RangeError(`coefficientLoss: ${doubtKind} has neither k nor a row; check the ductwork first`);
  return {
    law: 'velocity-pressure',
    k: row.k * count,
    area_m2,
    doubt: { kind: doubtKind, sd: element.doubt ?? row.doubt },
  };
}
