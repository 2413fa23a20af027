import type { Opinion } from '../meaning/opinions.ts';
import { FIGURE_FORMS } from '../tables/fields.ts';
import type { FieldName } from '../reading.ts';

/** What tells 22 kW from 2.2 kW: volts and amps, or the air's power. */
const WITNESSES: readonly (readonly FieldName[])[] = [
  ['current_A', 'voltage_V'],
  ['flow_m3_s', 'pressure_Pa'],
];

/**
 * Whether a power may have lost its decimal point without anything on the plate that would show it: two figures, the
 * tenth of which is a usual size as well. Source of the sizes: IEC 60072-1, NEMA MG 1 part 10.
 */
export function mayHaveLostPoint({ field, settled }: Opinion, all: readonly Opinion[]): boolean {
  if (field !== 'ratedPower_W') return false;
  if (WITNESSES.some((fields) => fields.every((name) => all.some((other) => other.field === name)))) return false;
  return settled.parts.some(({ candidate: { alternatives } }) => {
    const { numbers, printed, factor } = alternatives[0]!;
    const sizes = factor === null ? [] : (FIGURE_FORMS[field]!.usualIn?.(factor) ?? []);
    return /^\d\d$/.test(printed) && sizes.some((size) => Math.abs(size / (numbers![0]! / 10) - 1) < 1e-6);
  });
}
