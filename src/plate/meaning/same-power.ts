import type { SettledPart } from './settled.ts';

/** Makers round the two numbers of one power, each in its own unit: `0,12 kW` and `1/6 HP`. */
const SAME = 0.06;
/** Kilowatts and watts: what the field itself is in. */
const OWN_UNITS: readonly (number | null)[] = [1, 1000];

/**
 * Places of a power without those that say in horsepower what another says in kilowatts: one power printed twice is one.
 * Sizes in kilowatts and in horsepower lie beside each other. Source: IEC 60072-1, NEMA MG 1 part 10.
 */
export function withoutRepeated(parts: readonly SettledPart[]): SettledPart[] {
  const own = parts.filter(isInOwnUnit);
  return parts.filter(
    (part) => isInOwnUnit(part) || !own.some((other) => Math.abs(power(part) / power(other) - 1) < SAME),
  );
}

const best = ({ candidate }: SettledPart) => candidate.alternatives[0]!;
const isInOwnUnit = (part: SettledPart) => OWN_UNITS.includes(best(part).factor);
const power = (part: SettledPart) => best(part).numbers?.[0] ?? NaN;
