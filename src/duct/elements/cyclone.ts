import { z } from 'zod';
import { fraction, nonNegative, oneOf, positive, doubt } from '../../fields.ts';

export const Drum = z.strictObject({
  material: oneOf(['steel', 'hdpe', 'plywood', 'other'], 'drum material').nullish(),
  diameter_m: positive('drum diameter', 'length').nullish(),
  height_m: positive('drum height', 'length').nullish(),
  wallThickness_m: positive('wall', 'length').nullish(),
  lidThickness_m: positive('lid', 'length').nullish(),
});

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
