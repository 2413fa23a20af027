import { z } from 'zod';
import { between, nonNegative, positive, doubt } from '../../fields.ts';
import { reducer } from '../tables/index.ts';
import { coefficientLoss } from './coefficient-loss.ts';
import type { ElementKind } from './element.ts';

/** Fields of a change of diameter, in flow direction [m]. */
export const Reducer = z.strictObject({
  kind: z.literal('reducer'),
  fromDiameter_m: positive('diameter before', 'length'),
  toDiameter_m: positive('diameter after', 'length'),
  coneAngle_deg: between(0, 180, 'whole angle of the cone', 'angle', '180 is a sudden step').nullish(),
  k: nonNegative('loss coefficient').nullish(),
  doubt: doubt(),
});

/** Reducer: k on the velocity pressure of the smaller side; k from shape where it is not given. Source: Crane, see the table. */
export const reducerKind: ElementKind<typeof Reducer> = {
  kind: 'reducer',
  label: 'change of diameter',
  fields: Reducer,
  losses: (element) => [
    coefficientLoss(element, 'reducer', { diameter_m: Math.min(element.fromDiameter_m, element.toDiameter_m) }, () =>
      reducer(element),
    ),
  ],
  part: () => 'other',
  source: 'Crane TP-410; Borda–Carnot for the sudden widening',
};
