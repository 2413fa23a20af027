import { fail, ok, type Issue, type Result, type Warning } from '../issues/result.ts';
import { toBase, plainSpelling, unitByName, unitsNamed, unitsOf, type NamedUnit } from './names.ts';
import { NUMBER_PATTERN, westernDigits } from './number-text.ts';
import { QUANTITIES, type Quantity } from './quantities.ts';
import { workOut } from './sum.ts';
import type { Unit } from './units.ts';

/** What somebody typed, understood: value in the quantity's base unit, the unit it was typed in, and the text as typed. */
export type ParsedQuantity = { si: number; unit: string; asTyped: string };

const LONGEST_TEXT = 120;
const NUMERIC = /^[\d\s.,'+\-*/()eE٫]*$/;

/**
 * Reads a quantity as people type it: "4 in", "0,75 kW", "1 1/2 HP", "3*25.4 mm", "5 ft 6 in", "٢٠٠", "150 mm WG".
 * @param text         what was typed
 * @param quantity     what the field wants
 * @param defaultUnit  unit (any spelling) of a bare number: the one the field shows
 * @param path         JSON Pointer put into issues and warnings
 * @returns value in the base unit of `QUANTITIES[quantity]`. Nothing is guessed in silence: where a comma or point, a spoken
 *          unit ("mm" for a pressure) or a bare share can be read in two ways, a warning names both readings.
 * Issues are `not-understood`. Throws RangeError where `defaultUnit` is no unit of the quantity.
 */
export function parseQuantity(
  text: string,
  quantity: Quantity,
  defaultUnit: string,
  path = '',
): Result<ParsedQuantity> {
  const bare = unitByName(defaultUnit, quantity);
  if (!bare) throw new RangeError(`parseQuantity: expected a unit of ${quantity}, received "${defaultUnit}"`);
  const asTyped = text.trim();
  const refuse = (message: string): Result<ParsedQuantity> =>
    fail([{ code: 'not-understood', path, message } satisfies Issue]);
  if (asTyped === '') return refuse('Nothing is typed here yet.');
  if (asTyped.length > LONGEST_TEXT) return refuse('That is too long for one number.');
  if (/\d\s*(?:[–—…]|\.\.+|to)\s*\d/i.test(asTyped))
    return refuse(`“${asTyped}” looks like a range. One value, please.`);

  const plain = toPlainText(asTyped, quantity);
  if (!/\d/.test(plain)) return refuse(`“${asTyped}” has no number in it.`);

  const { number, named, rest } = split(plain);
  if (named === null && rest !== '') return compound(plain, quantity, asTyped) ?? refuse(unknownUnit(rest, quantity));
  const chosen = named === null ? { unit: bare, assumed: false } : named.find((n) => n.unit.quantity === quantity);
  if (chosen === undefined) {
    return refuse(
      `“${asTyped}” is ${QUANTITIES[named![0]!.unit.quantity].label}. Here ${QUANTITIES[quantity].label} is wanted: ${examples(quantity)}.`,
    );
  }
  const sum = workOut(number);
  if (!sum.ok) return compound(plain, quantity, asTyped) ?? refuse(sum.message);

  const unit = chosen.unit;
  const { value, warnings } = weigh(sum.value, sum.other, unit, asTyped, path);
  if (sum.mixed)
    warnings.push(twoReadings(`“${asTyped}” is read as ${show(sum.value)} ${unit.unit}, not as a subtraction.`, path));
  if (chosen.assumed) warnings.push({ code: 'unit-assumed', path, text: `“${asTyped}” is taken as ${unit.unit}.` });
  if (quantity === 'fraction' && named === null && unit.unit === '%' && value > 0 && value < 1) {
    warnings.push(
      twoReadings(`“${asTyped}” is read as ${show(value)} %. Type ${show(value * 100)} if that share is meant.`, path),
    );
  }
  const si = toBase(value, unit);
  return Number.isFinite(si)
    ? ok({ si, unit: unit.unit, asTyped }, warnings)
    : refuse(`“${asTyped}” is too large a number.`);
}

/** Western digits, plain quotes and dashes, ½ as 1/2, × as *, and no ⌀ before a diameter. */
function toPlainText(text: string, quantity: Quantity): string {
  const spaced = text.replace(/(\d)(?=[¼-¾⅐-⅞])/g, '$1 ').replaceAll('÷', '/');
  const plain = westernDigits(plainSpelling(spaced))
    .replaceAll('\u2044', '/')
    .replace(/(\d|\))\s*[x×·⋅]\s*(?=[\d(])/gi, '$1*');
  return (quantity === 'length' ? plain.replace(/^\s*(?:[ø⌀Ø]|dia\.?)\s*/i, '') : plain).trim();
}

/** The longest tail that is the name of a unit and leaves a number before it. */
function split(plain: string): { number: string; named: NamedUnit[] | null; rest: string } {
  const endOfNumber = plain.search(/[^\d\s.,'+\-*/()eE٫]/);
  const start = plain.search(/\d/) + 1;
  for (let at = start; at < plain.length; at++) {
    if (endOfNumber !== -1 && at > endOfNumber) break;
    const startsInsideNumber = /[\d.,]/.test(plain[at]!) && plain[at - 1] !== ' ';
    if (startsInsideNumber || plain[at] === ' ') continue;
    const named = unitsNamed(plain.slice(at));
    if (named.length > 0) return { number: plain.slice(0, at), named, rest: '' };
  }
  if (NUMERIC.test(plain)) return { number: plain, named: null, rest: '' };
  return { number: '', named: null, rest: plain.slice(endOfNumber).trim() };
}

/** "5 ft 6 in", "2 min 30 s": two numbers, the second in a smaller unit of the same quantity; null where it is not that. */
function compound(plain: string, quantity: Quantity, asTyped: string): Result<ParsedQuantity> | null {
  const number = `(?=[\\d.,])${NUMBER_PATTERN}`;
  const pattern = new RegExp(
    `^(${number})\\s*([^\\d\\s.,()*/+-][^\\d]*?)\\s*(${number}(?:\\s*/\\s*\\d+|\\s+\\d+/\\d+)?)\\s*([^\\d\\s].*)$`,
  );
  const [, firstText, firstUnit, secondText, secondUnit] = pattern.exec(plain) ?? [];
  if (firstText === undefined) return null;
  const large = unitByName(firstUnit!, quantity);
  const small = unitByName(secondUnit!, quantity);
  const first = workOut(firstText);
  const second = workOut(secondText!);
  if (!large || !small || !first.ok || !second.ok || large.offset !== 0 || small.factor >= large.factor) return null;
  return ok({ si: toBase(first.value, large) + toBase(second.value, small), unit: large.unit, asTyped });
}

/** Settles two readings of one number by what the quantity can be in a workshop, and says so where that does not settle it. */
function weigh(
  value: number,
  other: number | null,
  unit: Unit,
  asTyped: string,
  path: string,
): { value: number; warnings: Warning[] } {
  if (other === null) return { value, warnings: [] };
  const plausible = (n: number): boolean => {
    const [low, high] = QUANTITIES[unit.quantity].plausible;
    return Math.abs(toBase(n, unit)) >= low && Math.abs(toBase(n, unit)) <= high;
  };
  if (plausible(value) && !plausible(other)) return { value, warnings: [] };
  const [chosen, left] = plausible(other) && !plausible(value) ? [other, value] : [value, other];
  const text = `“${asTyped}” is read as ${show(chosen)} ${unit.unit}. Type ${show(left)} ${unit.unit} if that is meant.`;
  return { value: chosen, warnings: [twoReadings(text, path)] };
}

const twoReadings = (text: string, path: string): Warning => ({ code: 'two-readings', text, path });
const show = (value: number): string => String(Number(value.toPrecision(10)));
const examples = (quantity: Quantity): string =>
  unitsOf(quantity)
    .slice(0, 5)
    .map((u) => u.unit)
    .join(', ');
const unknownUnit = (rest: string, quantity: Quantity): string =>
  `“${rest}” is no unit known here. Try ${examples(quantity)}.`;
