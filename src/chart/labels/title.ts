import { plainSpelling } from '../../units/names.ts';
import { editDistance } from '../../words/edit-distance.ts';
import { byCyrillic } from './cyrillic-titles.ts';
import { TITLE_SIGNS, TITLE_WORDS, type TitleQuantity } from './title-words.ts';
import { findUnit, isOnlyUnit, type FoundUnit } from './title-unit.ts';

/** What the words beside a scale say. */
export type Title = {
  readonly text: string;
  readonly quantity: TitleQuantity | null;
  /** 0..1: how surely the words mean it */
  readonly sureness: number;
  readonly unit: FoundUnit | null;
  /** what the printed numbers are to be multiplied by; 1 where nothing is printed */
  readonly multiplier: number;
  /** distance from its scale, letter heights */
  readonly rank: number;
};

const PHRASES = TITLE_WORDS.flatMap(([quantity, weight, words]) =>
  words.split(' | ').map((phrase) => ({ quantity, weight, phrase })),
).sort((a, b) => b.phrase.length - a.phrase.length);
const SIGNS = new Map(
  TITLE_SIGNS.flatMap(([quantity, signs]) => signs.split(' | ').map((s) => [s, quantity] as const)),
);

/** Lower case without accents, everything but letters and digits a blank. */
const plainWords = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/ß/g, 'ss')
    .replace(/ł/g, 'l')
    .replace(/ø/g, 'o')
    .replace(/æ/g, 'ae')
    .toLowerCase()
    .replace(/[^a-z0-9%]+/g, ' ')
    .trim();

/**
 * Understands an axis title as it was read, slips of the reader included: "Fan static pressure [mm WG]",
 * "Volumenstrom qV in m³/h", "Q x 1000 m3/h", "SP, in. WG".
 */
export function parseTitle(text: string, rank = 0): Title {
  const { rest, multiplier } = takeMultiplier(closed(plainSpelling(text)));
  const named = byWord(rest) ?? byCyrillic(rest) ?? byKind(rest);
  const sign = named || isOnlyUnit(rest) ? null : bySign(rest);
  // a sign may look like a unit of something else: Ps and PS
  const first = findUnit(rest, pressureLike(named?.quantity));
  const unit = sign && first && !fits(sign, first) ? findUnit(rest, pressureLike(sign)) : first;
  const quantity = named?.quantity ?? sign;
  const sureness = named ? named.sureness : sign ? (unit && fits(sign, unit) ? 0.85 : 0.5) : 0;
  return { text, quantity: quantity ?? null, sureness, unit, multiplier, rank };
}

/** A bracket that opens closes at the end, whatever upright stroke it was read as. */
const closed = (text: string): string =>
  text.replace(
    /([[(])([^[\](){}]{1,12})[lI1|JjiL!]$/,
    (_, open, inside) => `${open}${inside}${open === '[' ? ']' : ')'}`,
  );

/** The quantity in the unit table that a title's quantity is measured in. */
export function pressureLike(quantity: TitleQuantity | null | undefined) {
  if (!quantity || quantity === 'other') return undefined;
  return quantity === 'flow'
    ? 'flow'
    : quantity === 'shaft_power'
      ? 'power'
      : quantity === 'efficiency'
        ? 'fraction'
        : 'pressure';
}

const fits = (sign: TitleQuantity, unit: FoundUnit) => pressureLike(sign) === unit.unit.quantity;

function byWord(text: string): { quantity: TitleQuantity; sureness: number } | null {
  const words = plainWords(text);
  const padded = ` ${words} `;
  const whole = PHRASES.find(({ phrase }) => padded.includes(` ${phrase} `));
  if (whole && (whole.quantity !== 'pressure' || !/ (stat|tota|gesamt)/.test(padded)))
    return { quantity: whole.quantity, sureness: whole.weight };
  // "pressure, static"
  const turned = PHRASES.find(({ phrase }) => {
    const [a, b, c] = phrase.split(' ');
    return a && b && !c && padded.includes(` ${b} ${a} `);
  });
  if (turned) return { quantity: turned.quantity, sureness: turned.weight };
  // slips of the reader: one letter in five may be wrong
  let best: { quantity: TitleQuantity; sureness: number; length: number } | null = null;
  const tokens = words.split(' ');
  for (const { quantity, weight, phrase } of PHRASES) {
    if (phrase.length < 5 || (best && best.length >= phrase.length)) continue;
    const n = phrase.split(' ').length;
    const letters = phrase.replaceAll(' ', '');
    // a lost letter leaves a blank
    for (const count of [n, n + 1])
      for (let i = 0; i + count <= tokens.length; i++) {
        const some = tokens.slice(i, i + count).join('');
        if (Math.abs(some.length - letters.length) > 2) continue;
        const slips = editDistance(some, letters);
        if (slips <= Math.floor(letters.length / 5))
          best = { quantity, sureness: weight * (1 - (1.5 * slips) / letters.length), length: phrase.length };
      }
  }
  return best ?? (whole ? { quantity: whole.quantity, sureness: whole.weight } : null);
}

/** "statica [Pa]": the kind of a pressure, whose noun stands apart. */
function byKind(text: string): { quantity: TitleQuantity; sureness: number } | null {
  if (findUnit(text)?.unit.quantity !== 'pressure') return null;
  const kind = KINDS.find(([word]) => word.test(plainWords(text)));
  return kind ? { quantity: kind[1], sureness: KIND_ALONE } : null;
}

const KINDS: readonly (readonly [RegExp, TitleQuantity])[] = [
  [/\b(static|statica|statico|statique|statische?r?|estatica|statik)\b/, 'static_pressure'],
  [/\b(total|totale|totaal|gesamt|toplam)\b/, 'total_pressure'],
];
const KIND_ALONE = 0.8;

/** Names of machines, "PW-55", begin like signs. */
const MACHINE = /\b[A-Z]{1,4}-\d+\b/g;

function bySign(text: string): TitleQuantity | null {
  const tokens = text
    .replace(/[[(].*?[\])]/g, ' ')
    .replace(MACHINE, ' ')
    .split(/[\s,;:=/|\-–]+/);
  for (const token of tokens) {
    const quantity = SIGNS.get(token);
    if (quantity) return quantity;
  }
  return null;
}

const MULTIPLIERS: readonly RegExp[] = [
  /[x×*·]\s*(10{2,6})(?!\d)/i,
  /(?<![\d.,])(10{2,6})\s*[x×*·]/i,
  /[x×*·]?\s*10\s*\^?\s*([2-6])(?=\s|$|[\])mMlLcCpPwWkK])/,
  /\bin\s+(thousands|hundreds|1000s?)\b/i,
  // the raised figure was not read; it is a three as a rule
  /[x×*·]\s*10()[^\d\s)\]]/i,
  /(?:^|[[(\s])10()\s?[°º?'"*](?=\s?\p{L})(?!\s?[CF]\b)/iu,
];

/** "× 1000", "x10³", "10^3 m³/h", "(1000 CFM)", "in thousands": the factor, and the text without it. */
function takeMultiplier(text: string): { rest: string; multiplier: number } {
  const grouped = text.replace(/\b1[ ,.'](000)\b/g, '1$1');
  const bare = /[[({]\s*(10{2,5})\s+[a-z#]/i.exec(grouped);
  if (bare) return { rest: grouped.replace(bare[1]!, ' '), multiplier: Number(bare[1]) };
  for (const [k, pattern] of MULTIPLIERS.entries()) {
    const hit = pattern.exec(grouped);
    if (!hit) continue;
    const said = hit[1]!.toLowerCase() || '1000';
    const multiplier =
      k === 2 ? 10 ** Number(said) : said.startsWith('thou') ? 1000 : said.startsWith('hun') ? 100 : parseInt(said, 10);
    return { rest: grouped.replace(hit[0], ' '), multiplier };
  }
  return { rest: text, multiplier: 1 };
}
