import { z } from 'zod';
import { nonNegative, oneOf, positive, doubt, between } from '../../fields.ts';
import { SURFACE_NAMES, SURFACES, UNKNOWN_SURFACE } from '../../pipe/index.ts';
import { GIVEN_ROUGHNESS_DOUBT, type ElementKind } from './element.ts';

/** Fields of a straight run: inside diameter and length [m], its surface or its own roughness [m]. */
export const Pipe = z.strictObject({
  kind: z.literal('pipe'),
  surface: oneOf(SURFACE_NAMES, 'surface').nullish(),
  length_m: nonNegative('length', 'length'),
  diameter_m: positive('inside diameter', 'length'),
  roughness_m: nonNegative('roughness', 'length').nullish(),
  rise_m: between(-1000, 1000, 'rise', 'length').nullish(),
  doubt: doubt(),
});

/** A wall rougher than this share of the diameter leaves no pipe between the grains. */
const ROUGHEST = 0.25;

/**
 * A straight pipe. `rise_m` costs no pressure here: all pressures are gauge against the room air at the same height, and
 * the column in the pipe weighs what the room's column beside it weighs. It only marks runs where dust must be lifted.
 */
export const pipeKind: ElementKind<typeof Pipe> = {
  kind: 'pipe',
  label: 'straight pipe or hose',
  fields: Pipe,
  losses: ({ surface, length_m, diameter_m, roughness_m, doubt }) => {
    const record = surface == null ? UNKNOWN_SURFACE : SURFACES[surface];
    const sd = doubt ?? (roughness_m == null ? record.doubt : GIVEN_ROUGHNESS_DOUBT);
    return [
      {
        law: 'friction',
        length_m,
        diameter_m,
        roughness_m: roughness_m ?? record.roughness_m,
        doubt: { kind: record.doubtKind, sd },
      },
    ];
  },
  part: ({ surface }) => (surface != null && SURFACES[surface].doubtKind === 'hose-roughness' ? 'hose' : 'pipe'),
  faults: ({ surface, roughness_m, diameter_m }) => {
    const roughness = roughness_m ?? (surface == null ? UNKNOWN_SURFACE : SURFACES[surface]).roughness_m;
    if (roughness <= ROUGHEST * diameter_m) return [];
    const message =
      roughness_m == null
        ? `A pipe ${diameter_m} m wide is too narrow for this surface, whose grains are ${roughness} m high. Check the diameter.`
        : `A roughness of ${roughness_m} m does not fit into a pipe ${diameter_m} m wide. Roughness is the height of the grains of the wall, usually well under a millimetre (0.001 m).`;
    return [{ code: 'out-of-range', field: roughness_m == null ? 'diameter_m' : 'roughness_m', message }];
  },
  remarks: ({ surface, roughness_m }) =>
    surface == null && roughness_m == null
      ? [
          {
            code: 'surface-assumed',
            field: 'surface',
            text: 'The surface of this pipe is not given: galvanised duct is assumed, with much doubt.',
          },
        ]
      : [],
  source: 'Colebrook 1939; roughness by surface, see src/pipe/surfaces.ts',
};
