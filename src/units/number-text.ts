/**
 * Reads one written number: any script's digits, decimal point or comma, thousands set off by comma, point, space or apostrophe.
 *
 * Rules, in this order:
 * - both a comma and a point: the last one is the decimal mark, the other sets off thousands ("1.234,5", "1,234.5");
 * - the same mark twice or more: thousands ("1,234,567"; also "12,34,567", as in South Asia);
 * - one mark with a leading 0 ("0,750"), with more than three digits before, or with other than three digits after: decimal ("1,2");
 * - one mark, one to three digits before, exactly three after ("1,200", "1.200"): two readings. A comma is taken for thousands, a
 *   point for a decimal point, and the other reading is handed back so that the caller can weigh and name it;
 * - a space or apostrophe before exactly three digits sets off thousands ("1 200", "1'200").
 */
export type WrittenNumber = { value: number; other: number | null };

/** The zero of each script's ten digits; the other nine follow it (Unicode, general category Nd). */
const ZEROS = [
  0x0660, 0x06f0, 0x0966, 0x09e6, 0x0a66, 0x0ae6, 0x0b66, 0x0be6, 0x0c66, 0x0ce6, 0x0d66, 0x07c0, 0x1040, 0x0e50,
];

/** Digits of every script in the table as 0–9, and the Arabic marks: ٫ is a decimal mark, ٬ sets off thousands, ٪ is %. */
export const westernDigits = (text: string): string =>
  text
    .replace(/\p{Nd}/gu, (digit) => {
      const code = digit.codePointAt(0)!;
      const zero = ZEROS.find((z) => code >= z && code <= z + 9);
      return zero === undefined ? digit : String(code - zero);
    })
    .replace(/(\d)٬(?=\d{3})/g, "$1'")
    .replace(/٪/g, '%')
    .replace(/،/g, ',');

/** The Arabic decimal mark can't be anything else. */
const DECIMAL = '٫';

/** What a written number looks like; to be used inside larger patterns. */
export const NUMBER_PATTERN = `(?:\\d{1,3}(?:[ '\\u00a0\\u2009\\u202f]\\d{3}(?!\\d))+|\\d+)?(?:[.,${DECIMAL}]\\d+)*[.,${DECIMAL}]?(?:[eE][+-]?\\d+)?`;

const THOUSANDS_HEAD = /^[1-9]\d{0,2}$/;

/** The number, or null where the marks follow no rule ("1,23,4", "1.2.3"). Unit: none. */
export function readNumber(raw: string): WrittenNumber | null {
  const [, mantissa = '', exponent = ''] = /^(.*?)([eE][+-]?\d+)?$/s.exec(raw) ?? [];
  const text = mantissa.replace(/(\d)[ '\u00a0\u2009\u202f](?=\d{3})/g, '$1');
  if (!/\d/.test(text)) return null;
  const whole = (digits: string): WrittenNumber | null => finite(Number(digits + exponent));

  if (text.includes(DECIMAL)) {
    const [before = '', after = '', ...rest] = text.split(DECIMAL);
    if (rest.length > 0 || /[.,]/.test(after)) return null;
    const head = /[.,]/.test(before) ? ungroup(before) : before;
    return head === null ? null : whole(`${head}.${after}`);
  }
  const marks = [...text].filter((c) => c === '.' || c === ',');
  if (marks.length === 0) return whole(text);

  const last = marks[marks.length - 1]!;
  if (marks.length === 1) return readWithOneMark(text, last, exponent);
  if (marks.every((m) => m === last)) {
    const digits = ungroup(text);
    return digits === null ? null : whole(digits);
  }
  const cut = text.lastIndexOf(last);
  const head = ungroup(text.slice(0, cut));
  return head === null || text.slice(0, cut).includes(last) ? null : whole(`${head}.${text.slice(cut + 1)}`);
}

function readWithOneMark(text: string, mark: string, exponent: string): WrittenNumber | null {
  const [before = '', after = ''] = text.split(mark);
  const decimal = finite(Number(`${before || '0'}.${after || '0'}${exponent}`));
  const couldBeThousands = exponent === '' && after.length === 3 && THOUSANDS_HEAD.test(before);
  if (!decimal || !couldBeThousands) return decimal;
  const thousands = Number(before + after);
  return mark === ',' ? { value: thousands, other: decimal.value } : { value: decimal.value, other: thousands };
}

/** Digits of a number in groups: by three, or by two with three last; null where the groups are uneven. */
function ungroup(text: string): string | null {
  const even = /^[1-9]\d{0,2}(?:([.,])\d{3})(?:\1\d{3})*$/.test(text);
  const southAsian = /^[1-9]\d?(?:,\d{2})+,\d{3}$/.test(text);
  return even || southAsian ? text.replaceAll(/[.,]/g, '') : null;
}

const finite = (value: number): WrittenNumber | null => (Number.isFinite(value) ? { value, other: null } : null);
