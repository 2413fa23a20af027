import type { FieldValue } from '../../fixtures/generate/plate/words/item.ts';

/** What became of a field or a cell: right, wrong or missing and said so, or wrong without a word. */
export type Verdict = 'right' | 'flagged' | 'silentlyWrong';
export type Claim = { value: unknown; needsReview: boolean; derived: boolean };

/** Whole numbers in the nature of the thing: judged exactly. */
const WHOLE = new Set([
  'phases',
  'frequency_Hz',
  'year',
  'speed_rpm',
  'voltage_V',
  'capacitorVoltage_V',
  'mass_kg',
  'ambient_C',
  'airTemperature_C',
]);
/** Share by which any other number may be off. */
const TOLERANCE = 0.005;

export const PLATE_FIELDS = (
  'ratedPower_W voltage_V current_A frequency_Hz phases powerFactor efficiency speed_rpm serviceFactor capacitor_uF ' +
  'startCapacitor_uF capacitorVoltage_V duty insulationClass ipRating efficiencyClass codeLetter designLetter frameSize ' +
  'serialNumber year mass_kg ambient_C airTemperature_C flow_m3_s pressure_Pa wheelDiameter_m'
).split(' ');
export const SHEET_FIELDS = ['voltage_V', 'frequency_Hz', 'ductDiameter_m', 'airTemperature_C', 'barometer_Pa'];

const letters = (value: unknown) =>
  String(value)
    .toUpperCase()
    .normalize('NFKC')
    .replace(/[^\p{L}\p{N}%]/gu, '');

/** What different works print for the same thing. */
const SAME_TEXT: Record<string, (text: string) => string> = {
  ipRating: (text) => text.replace(/^IP/, ''),
  insulationClass: (text) => text.replace(/^(CLASS|CL|KL)(?=.)/, ''),
  duty: (text) => (text.startsWith('CONT') ? 'CONT' : text),
};

const numberIn = (value: unknown): number =>
  typeof value === 'number' ? value : typeof value === 'string' && value.trim() !== '' ? Number(value) : NaN;

function sameOne(name: string, truth: number | string, got: unknown): boolean {
  if (typeof truth === 'string') {
    const plain = SAME_TEXT[name] ?? ((text: string) => text);
    return plain(letters(truth)) === plain(letters(got));
  }
  const number = numberIn(got);
  if (!Number.isFinite(number)) return false;
  if (WHOLE.has(name) && Number.isInteger(truth)) return Math.abs(number - truth) < 1e-6 * Math.max(1, Math.abs(truth));
  if (truth === 0) return Math.abs(number) < 1e-9;
  return Math.abs(number - truth) <= TOLERANCE * Math.abs(truth) * (1 + 1e-9);
}

/** Numbers within half a percent or exactly, text without case and blanks, lists in any order but whole. */
export function sameValue(name: string, truth: FieldValue, got: unknown): boolean {
  if (got === null || got === undefined) return false;
  const wanted = Array.isArray(truth) ? truth : [truth];
  const left: unknown[] = Array.isArray(got) ? [...(got as unknown[])] : [got];
  if (wanted.length !== left.length) return false;
  return wanted.every((one) => {
    const at = left.findIndex((g) => sameOne(name, one, g));
    if (at >= 0) left.splice(at, 1);
    return at >= 0;
  });
}

export const isEmpty = (value: unknown): boolean =>
  value === null || value === undefined || value === '' || (Array.isArray(value) && value.length === 0);

/** An answer's field or cell, whatever way it was given. */
export function claimOf(answer: unknown): Claim {
  const record =
    answer !== null && typeof answer === 'object' && !Array.isArray(answer)
      ? (answer as Partial<Claim>)
      : { value: answer };
  return { value: record.value, needsReview: record.needsReview === true, derived: record.derived === true };
}

/** Nothing claimed is as good as a flag: the person is told. */
export function judge(name: string, truth: FieldValue, { value, needsReview }: Claim): Verdict {
  if (isEmpty(value)) return 'flagged';
  if (sameValue(name, truth, value)) return 'right';
  return needsReview ? 'flagged' : 'silentlyWrong';
}
