import type { Writing } from '../writing/written.ts';
import { around, type Box } from './layout/runs.ts';
import { bestOf, type Settled } from './meaning/settled.ts';
import type { FieldValue, PlateField, PlateFields } from './reading.ts';

/** From this chance on a value is stood by. */
const SURE = 0.9;

/** Settled fields as the reading gives them. */
export function fieldsOf(settled: readonly Settled[], writing: Writing): PlateFields {
  return Object.fromEntries(settled.map((field) => [field.field, fieldOf(field, writing)]));
}

function fieldOf({ parts }: Settled, writing: Writing): PlateField {
  const best = parts.map(({ candidate }) => bestOf(candidate));
  const confidence = parts.reduce((all, { chance, candidate }) => all * chance * bestOf(candidate).share, 1);
  return {
    value: valueOf(
      best.flatMap(({ numbers, code }): readonly (number | string)[] => numbers ?? [code!]),
      parts[0]!.candidate.field,
    ),
    asPrinted: [...new Set(best.map(({ printed }) => printed))].join(' / '),
    box_px: boxIn(around(parts.map(({ candidate }) => candidate.place)), writing),
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
