import type { Writing } from '../writing/written.ts';
import { confidenceFrom, groundsOf } from './confidence.ts';
import type { Box } from './layout/boxes.ts';
import type { Opinion } from './meaning/opinions.ts';
import { mayHaveLostPoint } from './physics/lost-point.ts';
import type { Witnessed } from './physics/witness.ts';
import type { FieldValue, PlateField, PlateFields } from './reading.ts';

/** From this chance on a value is stood by. */
const SURE = 0.92;
/** From this chance on two fields are said to contradict each other. */
const AT_ODDS = 0.5;

/** Fields as the reading gives them. */
export function fieldsOf({ opinions, contradictions }: Witnessed, writing: Writing): PlateFields {
  const doubted = new Set(contradictions.filter(({ chance }) => chance > AT_ODDS).flatMap(({ fields }) => fields));
  return Object.fromEntries(
    opinions.map((opinion) => {
      const field = fieldOf(opinion, writing);
      const isDoubtful = opinion.settled.parts.some(({ candidate }) => candidate.place.isDoubtful);
      const isDoubted =
        isDoubtful || opinion.settled.isDoubted || doubted.has(opinion.field) || mayHaveLostPoint(opinion, opinions);
      return [opinion.field, isDoubted ? { ...field, needsReview: true } : field];
    }),
  );
}

function fieldOf(opinion: Opinion, writing: Writing): PlateField {
  const { field, box, choices } = opinion;
  const { value } = choices[0]!;
  const confidence = confidenceFrom(groundsOf(opinion));
  return {
    value: valueOf(value.parts, field),
    asPrinted: value.printed,
    box_px: boxIn(box, writing),
    confidence,
    needsReview: confidence < SURE,
  };
}

/** Volts and amps are lists; of other fields a list only where values differ. */
function valueOf(values: readonly (number | string)[], field: string): FieldValue {
  const different = [...new Set(values)];
  if (field === 'voltage_V' || field === 'current_A' || different.length > 1) return different;
  return different[0]!;
}

/** The box in the photo that holds a box of the flat picture. */
function boxIn(box: Box, { toPhoto }: Writing): [number, number, number, number] {
  const corners = [toPhoto(box.x0, box.y0), toPhoto(box.x1, box.y0), toPhoto(box.x1, box.y1), toPhoto(box.x0, box.y1)];
  const [x, y] = [0, 1].map((k) => Math.min(...corners.map((corner) => corner[k]!)));
  const [right, bottom] = [0, 1].map((k) => Math.max(...corners.map((corner) => corner[k]!)));
  return [x!, y!, right! - x!, bottom! - y!];
}
