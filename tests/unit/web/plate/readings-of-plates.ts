import type { FieldName, FieldValue, PlateField, PlateReading, Rating } from '../../../../src/plate/reading.ts';
import type { PlateWork } from '../../../../web/plate/plate-work.ts';

/** What a test says of one field: its value, and what else is not as usual. */
type Told = FieldValue | (Partial<PlateField> & { value: FieldValue });

const isWhole = (told: Told): told is Partial<PlateField> & { value: FieldValue } =>
  typeof told === 'object' && !Array.isArray(told);

/** A reading of an invented plate, every field sure unless told otherwise. */
export function readingOf(
  fields: { [Name in FieldName]?: Told },
  more: Partial<PlateReading> & { ratings?: readonly Rating[] } = {},
): PlateReading {
  return {
    fields: Object.fromEntries(
      Object.entries(fields).map(([name, told]) => [
        name,
        {
          asPrinted: '',
          box_px: [100, 100, 200, 50],
          confidence: 0.95,
          needsReview: false,
          ...(isWhole(told) ? told : { value: told }),
        },
      ]),
    ),
    ratedPowerMeaning: 'shaft',
    corners_px: [],
    warnings: [],
    ...more,
  };
}

export const workOf = (reading: PlateReading | null, more: Partial<PlateWork> = {}): PlateWork => ({
  photoId: 'photo',
  width_px: 1600,
  height_px: 1200,
  reading,
  said: {},
  ...more,
});
