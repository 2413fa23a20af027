import type { FieldName } from '../reading.ts';
import { FIGURE_FORMS } from '../tables/fields.ts';

const NEVER = -Infinity;
/** A usual value of a field that is no whole number may be printed rounded: 3/4 HP as 0.56 kW. */
const ROUNDED = 0.006;
/** Values of one field that are printed as one list stand in these ratios: star and delta, series and parallel, a range. */
const PAIR_RATIOS = [Math.sqrt(3), 2];

/**
 * How much likelier a printed list of numbers is where the field is meant than where any number may stand.
 * @param numbers in the field's own unit
 * @param printed the figures as printed, whose count says how many numbers they might have been
 * @param factor of the unit it is printed in
 * @returns natural logarithm of the likelihood ratio; minus infinity where the field can't be that
 */
export function plausibility(field: FieldName, numbers: readonly number[], printed: string, factor: number): number {
  const form = FIGURE_FORMS[field]!;
  const usuals = form.usualIn?.(factor) ?? form.usual;
  const figures = printed.replace(/\D/g, '').length / numbers.length;
  let sum = 0;
  for (const number of numbers) {
    if (!(number >= form.least && number <= form.most)) return NEVER;
    if (form.whole && !Number.isInteger(number)) return NEVER;
    if (usuals) {
      if (form.usualShare === 1 && !usuals.includes(number)) return NEVER;
      const isUsual = usuals.some((usual) => Math.abs(number - usual) <= (form.whole ? 0 : ROUNDED) * usual);
      const byAccident = 1 / Math.max(9, 9 * 10 ** (Math.min(figures, 4) - 1));
      sum += isUsual
        ? Math.min(Math.max(Math.log(form.usualShare! / usuals.length / byAccident), 0.4), 4)
        : Math.log(1.0001 - form.usualShare!);
    }
  }
  return sum / Math.sqrt(numbers.length) + ofList(field, numbers) + (OWN[field]?.(numbers, printed) ?? 0);
}

/** Several numbers in one place make sense in few fields. */
function ofList(field: FieldName, numbers: readonly number[]): number {
  if (numbers.length === 1) return 0;
  if (numbers.length > 6) return NEVER;
  if (!FIGURE_FORMS[field]!.several) return field === 'ambient_C' ? -1 : -4;
  if (field !== 'voltage_V' && field !== 'current_A') return 0;
  let sum = 0;
  for (let i = 1; i < numbers.length; i++) {
    const ratio = Math.max(numbers[i]! / numbers[i - 1]!, numbers[i - 1]! / numbers[i]!);
    const isPair = PAIR_RATIOS.some((usual) => Math.abs(ratio / usual - 1) < 0.04) || ratio < 1.16;
    sum += isPair ? 0.7 : -1.2;
  }
  return sum;
}

/** What single fields look like beside their range. */
const OWN: { readonly [Name in FieldName]?: (numbers: readonly number[], printed: string) => number } = {
  // blowers of small shops: large motors are rare
  ratedPower_W: ([number]) => (number! > 100_000 ? -3 : number! > 45_000 ? -1.5 : 0),
  powerFactor: ([number], printed) =>
    /^0?[.,]\d{2,3}$/.test(printed) ? (number! >= 0.55 ? 2.5 : 0.3) : number === 1 ? -1 : -1.5,
  efficiency: ([number]) => (number! >= 0.5 ? 0.8 : -1.5),
  speed_rpm: ([number]) => speedFits(number!),
  year: ([number]) => (number! >= 1950 && number! <= 2027 ? 5.6 : -1),
  current_A: (_, printed) => (/[.,]/.test(printed) ? 0.4 : -0.4),
  phases: (_, printed) => (printed.includes('~') ? 5 : 0),
  mass_kg: ([number]) => (number! >= 2 && number! <= 900 ? 0 : -1.5),
  serviceFactor: (_, printed) => (/[.,]/.test(printed) ? 0 : -1.5),
};

/** Speeds just under a synchronous one are most plates; universal motors turn at 10,000 and more. */
function speedFits(speed_rpm: number): number {
  for (const frequency_Hz of [50, 60]) {
    for (const poles of [2, 4, 6, 8]) {
      const slip = 1 - (speed_rpm * poles) / (120 * frequency_Hz);
      if (slip >= -0.001 && slip < 0.1) return 1.2;
    }
  }
  return speed_rpm > 8000 ? 0 : -0.9;
}
