import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';
import { densityCorrection } from './density-correction.ts';
import { MEASURED_DOUBT, type ElementKind } from './element.ts';

/** One filter as rated or measured: flow [m3/s], pressure new and full [Pa], exponent of the flow [-]. */
export const FilterElement = z.strictObject({
  cleanFlow_m3_s: positive('flow of the test', 'flow'),
  cleanPressure_Pa: nonNegative('pressure when new', 'pressure'),
  loadedPressure_Pa: nonNegative('pressure when full', 'pressure').nullish(),
  exponent: between(0.5, 3, 'exponent', undefined, '1 for deep paper, 2 for an orifice').nullish(),
});

/** Fields of equal filters side by side. */
export const Filters = z.strictObject({
  kind: z.literal('filters'),
  count: between(1, 10_000, 'filters side by side'),
  each: FilterElement,
  airDensity_kg_m3: between(0.1, 5, 'air density of the test', 'density').nullish(),
  mediaArea_m2: positive('paper area of one', 'area').nullish(),
  dustCapacity_kg: positive('dust one can hold', 'mass').nullish(),
  doubt: doubt(),
});

/**
 * Air through paper goes with the first power of the flow, air through the pleats, rings and holes around it with the
 * second; a filter element lies between. The middle errs least when only one point is known.
 */
export const USUAL_FILTER_EXPONENT = 1.5;
/** With the exponent guessed as well, a filter is known half as surely. */
const GUESSED_EXPONENT_DOUBT = 0.2;

/** Filters: p·((Q/count)/cleanFlow)^exponent, p new or full, corrected to the air at hand when the test's air is known. */
export const filtersKind: ElementKind<typeof Filters> = {
  kind: 'filters',
  label: 'filters',
  fields: Filters,
  losses: ({ count, each, airDensity_kg_m3, doubt }, { air, filterState }) => {
    const exponent = each.exponent ?? USUAL_FILTER_EXPONENT;
    const pressure_Pa =
      filterState === 'loaded' ? (each.loadedPressure_Pa ?? each.cleanPressure_Pa) : each.cleanPressure_Pa;
    return [
      {
        law: 'power',
        flow_m3_s: each.cleanFlow_m3_s * count,
        pressure_Pa: pressure_Pa * densityCorrection(air.density_kg_m3, airDensity_kg_m3, exponent),
        exponent,
        doubt: { kind: 'filters', sd: doubt ?? (each.exponent == null ? GUESSED_EXPONENT_DOUBT : MEASURED_DOUBT) },
      },
    ];
  },
  part: () => 'filters',
  faults: ({ each }) =>
    each.loadedPressure_Pa != null && each.loadedPressure_Pa < each.cleanPressure_Pa
      ? [
          {
            code: 'contradiction',
            field: 'each/loadedPressure_Pa',
            message: `A full filter cannot lose less (${each.loadedPressure_Pa} Pa) than a new one (${each.cleanPressure_Pa} Pa). Exchange the two, or leave the loaded one out.`,
          },
        ]
      : [],
  remarks: ({ each }) =>
    each.loadedPressure_Pa == null
      ? [
          {
            code: 'loaded-pressure-unknown',
            field: 'each/loadedPressure_Pa',
            text: 'What these filters lose when full is not given: the loaded state is reckoned as clean, so it looks better than it is.',
          },
        ]
      : [],
  catchesDust: true,
  source: 'measured or rated by the user; n side by side take a share of the flow each',
};
