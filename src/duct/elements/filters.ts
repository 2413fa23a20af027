import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';

export const FilterElement = z.strictObject({
  cleanFlow_m3_s: positive('flow of the test', 'flow'),
  cleanPressure_Pa: nonNegative('pressure when new', 'pressure'),
  loadedPressure_Pa: nonNegative('pressure when full', 'pressure').nullish(),
  exponent: between(0.5, 3, 'exponent', undefined, '1 for deep paper, 2 for an orifice').nullish(),
});

export const Filters = z.strictObject({
  kind: z.literal('filters'),
  count: positive('filters side by side'),
  each: FilterElement,
  airDensity_kg_m3: between(0.1, 5, 'air density of the test', 'density').nullish(),
  mediaArea_m2: positive('paper area of one', 'area').nullish(),
  dustCapacity_kg: positive('dust one can hold', 'mass').nullish(),
  doubt: doubt(),
});
