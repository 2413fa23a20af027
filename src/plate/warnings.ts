import { pointer, type Warning } from '../issues/result.ts';
import type { Witnessed } from './physics/witness.ts';
import type { FieldName, PlateFields } from './reading.ts';

/** From this chance on a contradiction is worth a word. */
const WORTH_A_WORD = 0.5;

/** What each field is called in a sentence. */
const NAMES: { readonly [Name in FieldName]?: string } = {
  ratedPower_W: 'power',
  voltage_V: 'volts',
  current_A: 'amps',
  frequency_Hz: 'frequency',
  speed_rpm: 'speed',
  flow_m3_s: 'air flow and pressure',
  wheelDiameter_m: 'wheel',
};

/** Fields that do not go together: one of them is read wrongly, or printed wrongly. */
export function contradictions({ contradictions: found }: Witnessed, fields: PlateFields): Warning[] {
  return found
    .filter(({ chance, fields: names }) => chance > WORTH_A_WORD && names.every((name) => fields[name]))
    .map(({ fields: [first, second] }) => ({
      code: 'plate-contradicts-itself',
      text: `The ${NAMES[first!]} (${fields[first!]!.asPrinted}) and the ${NAMES[second!]} (${fields[second!]!.asPrinted}) do not go together: look at both again. If they stand there so, the plate itself is wrong or the motor was changed.`,
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
