import { pointer, type Warning } from '../issues/result.ts';
import type { Witnessed } from './physics/witness.ts';
import type { FieldName, PlateField, PlateFields } from './reading.ts';

/** From this chance on a contradiction is worth a word. */
const WORTH_A_WORD = 0.5;

/** What each field is called in a sentence, and the unit of its value. */
const NAMES: { readonly [Name in FieldName]?: readonly [name: string, unit: string] } = {
  ratedPower_W: ['power', 'W'],
  voltage_V: ['volts', 'V'],
  current_A: ['amps', 'A'],
  frequency_Hz: ['frequency', 'Hz'],
  speed_rpm: ['speed', 'rpm'],
  flow_m3_s: ['air flow', 'm³/s'],
  pressure_Pa: ['pressure', 'Pa'],
  wheelDiameter_m: ['wheel', 'm'],
};

/** A field in a sentence: its name, its value with the unit. */
function said(field: FieldName, { value }: PlateField): string {
  const [name, unit] = NAMES[field] ?? [field, ''];
  const values = (Array.isArray(value) ? value : [value]) as (number | string)[];
  const figures = values.map((v) => (typeof v === 'number' ? Number(v.toPrecision(4)) : v));
  return `${name} (${figures.join('/')} ${unit})`;
}

/** Fields that do not go together: one of them is read wrongly, or printed wrongly. */
export function contradictions({ contradictions: found }: Witnessed, fields: PlateFields): Warning[] {
  return found
    .filter(({ chance, fields: names }) => chance > WORTH_A_WORD && names.every((name) => fields[name]))
    .map(({ fields: [first, second] }) => ({
      code: 'plate-contradicts-itself',
      text: `The ${said(first!, fields[first!]!)} and the ${said(second!, fields[second!]!)} do not go together: look at both again. If they stand there so, the plate itself is wrong or the motor was changed.`,
      path: pointer('fields', first!),
    }));
}

/** A plate's largest flow and largest pressure are two points of the blower, never one. */
export function largestValues(fields: PlateFields): Warning[] {
  if (!fields.flow_m3_s || !fields.pressure_Pa) return [];
  const text =
    'The plate names an air flow and a pressure. Often these are the largest flow, with nothing attached, and the largest pressure, with the inlet closed: then they are two points and not one. Which are they here?';
  return [{ code: 'largest-values', text, path: pointer('fields', 'pressure_Pa') }];
}
