import {
  addDependencies,
  create,
  divideDependencies,
  multiplyDependencies,
  parseDependencies,
  subtractDependencies,
  unaryMinusDependencies,
  unaryPlusDependencies,
} from 'mathjs/number';
import { NUMBER_PATTERN, readNumber } from './number-text.ts';

/**
 * A sum worked out: its value, and the value under the other reading of its commas and points where there is one.
 * `mixed` is set where "1-1/2" was taken for one and a half, as plates and catalogues write it.
 */
export type Sum = { ok: true; value: number; other: number | null; mixed: boolean } | { ok: false; message: string };

/** Only the four operations, brackets and signs: no functions, no names, no assignment can be reached from text. */
const arithmetic = create({
  ...parseDependencies,
  ...addDependencies,
  ...subtractDependencies,
  ...multiplyDependencies,
  ...divideDependencies,
  ...unaryMinusDependencies,
  ...unaryPlusDependencies,
});

const TOKEN = new RegExp(`\\s*(?:([-+*/()])|(${NUMBER_PATTERN}))`, 'y');
const INCH_DENOMINATORS = new Set([2, 4, 8, 16, 32, 64]);

const isMixed = (numerator: string, denominator: string): boolean =>
  Number(numerator) > 0 && Number(numerator) < Number(denominator) && Number(denominator) <= 64;

/** Works out "3*25.4", "1 1/2", "(2+3)/4" or a plain number. Text holds Western digits already. Unit: none. */
export function workOut(text: string): Sum {
  const hyphenated = /^\s*(\d+)-(\d+)\/(\d+)\s*$/.exec(text);
  const mixed =
    hyphenated !== null && isMixed(hyphenated[2]!, hyphenated[3]!) && INCH_DENOMINATORS.has(Number(hyphenated[3]));
  if (!mixed && isRange(text)) return { ok: false, message: `“${text.trim()}” looks like a range. One value, please.` };

  const joined = mixed ? text.replace('-', ' ') : text;
  const written = joined.replace(
    /(?<![\d.,/])(\d+) +(\d+)\/(\d+)(?![\d.,/])/g,
    (all, whole: string, num: string, den: string) => (isMixed(num, den) ? `(${whole}+${num}/${den})` : all),
  );
  const tokens = tokensOf(written);
  if (typeof tokens === 'string') return { ok: false, message: tokens };

  const value = evaluate(tokens.first);
  if (value === null) return { ok: false, message: `“${text.trim()}” can't be worked out as a sum.` };
  const other = tokens.second === null ? null : evaluate(tokens.second);
  return { ok: true, value, other, mixed };
}

/** The sum written out twice, once for each reading of its numbers, or a sentence saying what is wrong with it. */
function tokensOf(text: string): { first: string; second: string | null } | string {
  let first = '';
  let second = '';
  let twoReadings = false;
  let afterValue = false;
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.trimEnd().length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    const [whole = '', operator = '', number = ''] = match ?? [];
    if (whole.trim() === '') return `“${text.trim()}” is not a number.`;
    if (number !== '') {
      const read = readNumber(number);
      if (!read) return `“${number}” can't be read as one number.`;
      if (afterValue) return `“${text.trim()}” has two numbers side by side.`;
      twoReadings ||= read.other !== null;
      first += read.value;
      second += read.other ?? read.value;
      afterValue = true;
    } else {
      if (operator === '(' && afterValue) return `“${text.trim()}” needs a sign before the bracket.`;
      first += operator;
      second += operator;
      afterValue = operator === ')';
    }
    if (TOKEN.lastIndex === at) return `“${text.trim()}” is not a number.`;
  }
  return { first, second: twoReadings ? second : null };
}

function evaluate(sum: string): number | null {
  try {
    const value: unknown = arithmetic.parse!(sum).evaluate();
    return typeof value === 'number' && Number.isFinite(value) ? value : null;
  } catch {
    return null;
  }
}

/** "10-12": the smaller number first, so nobody means to take one from the other. */
function isRange(text: string): boolean {
  const [, low, high] = /^\s*([\d.,]+)\s*-\s*([\d.,]+)\s*$/.exec(text) ?? [];
  if (low === undefined || high === undefined) return false;
  const from = readNumber(low);
  const to = readNumber(high);
  return from !== null && to !== null && from.value < to.value;
}
