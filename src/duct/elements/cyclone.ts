import { z } from 'zod';
import { fraction, nonNegative, oneOf, positive, doubt } from '../../fields.ts';
import { cycloneCoefficient } from '../tables/index.ts';
import { coefficientLoss } from './coefficient-loss.ts';
import { circleArea_m2, type ElementFault, type ElementKind } from './element.ts';

/** The drum under a cyclone, or the drum that is the cyclone: sizes [m] and what it is made of. Costs no pressure; it may be sucked in. */
export const Drum = z.strictObject({
  material: oneOf(['steel', 'hdpe', 'plywood', 'other'], 'drum material').nullish(),
  diameter_m: positive('drum diameter', 'length').nullish(),
  height_m: positive('drum height', 'length').nullish(),
  wallThickness_m: positive('wall', 'length').nullish(),
  lidThickness_m: positive('lid', 'length').nullish(),
});

/** Fields of a cyclone or drum separator: inside sizes [m], its own k on the inlet's velocity pressure where known. */
export const Cyclone = z.strictObject({
  kind: z.literal('cyclone'),
  inletWidth_m: positive('inlet width', 'length').nullish(),
  inletHeight_m: positive('inlet height', 'length').nullish(),
  inletDiameter_m: positive('inlet diameter', 'length').nullish(),
  outletDiameter_m: positive('outlet diameter', 'length').nullish(),
  bodyDiameter_m: positive('body diameter', 'length').nullish(),
  k: nonNegative('loss coefficient', undefined, 'on the velocity pressure of the inlet').nullish(),
  efficiency: fraction('share of the dust it catches').nullish(),
  drum: Drum.nullish(),
  doubt: doubt(),
});
type Cyclone = z.infer<typeof Cyclone>;

/** Area of the inlet [m2]: the rectangle where both sides are given, else the round one; undefined when neither is. */
function inletArea_m2({ inletWidth_m, inletHeight_m, inletDiameter_m }: Cyclone): number | undefined {
  if (inletWidth_m != null && inletHeight_m != null) return inletWidth_m * inletHeight_m;
  return inletDiameter_m == null ? undefined : circleArea_m2(inletDiameter_m);
}

function faults(element: Cyclone): ElementFault[] {
  const found: ElementFault[] = [];
  if (inletArea_m2(element) === undefined) {
    const message = 'The inlet of this cyclone has no size. Give its inside diameter, or its width and height.';
    found.push({ code: 'out-of-range', field: 'inletDiameter_m', message });
  }
  const { outletDiameter_m, bodyDiameter_m } = element;
  if (outletDiameter_m != null && bodyDiameter_m != null && outletDiameter_m >= bodyDiameter_m) {
    const message = `The outlet pipe (${outletDiameter_m} m) must be narrower than the body of the cyclone (${bodyDiameter_m} m).`;
    found.push({ code: 'contradiction', field: 'outletDiameter_m', message });
  }
  return found;
}

/** Cyclone: k on the velocity pressure of the inlet; k from geometry where it is not given. Source: two published models, see the table. */
export const cycloneKind: ElementKind<typeof Cyclone> = {
  kind: 'cyclone',
  label: 'cyclone or drum',
  fields: Cyclone,
  losses: (element) => {
    const area_m2 = inletArea_m2(element);
    if (area_m2 === undefined) throw new RangeError('cyclone: expected an inlet size; check the ductwork first');
    return [
      coefficientLoss(element, 'cyclone', { area_m2 }, () => cycloneCoefficient(area_m2, element.outletDiameter_m)),
    ];
  },
  part: () => 'cyclone',
  faults,
  catchesDust: true,
  source: 'middle of Shepherd & Lapple 1939 and Casal & Martínez-Benet 1983; the loss goes with the inlet velocity',
};
