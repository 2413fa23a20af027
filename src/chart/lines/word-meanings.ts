import type { AxisQuantity } from '../hints.ts';

/** What a word in the plot says about a line near it. */
export type WordMeaning = {
  readonly speed_rpm: number | null;
  /** said with its unit or as n = …, so that no other number can be meant */
  readonly isSurelySpeed: boolean;
  /** the figures of what may be a speed, one of them perhaps lost or misread */
  readonly figures: string | null;
  readonly quantity: AxisQuantity | null;
  /** names a line that is no fan curve: a share of efficiency, a system */
  readonly isOther: boolean;
  /** a blade angle or the like: tells curves of one speed apart */
  readonly isVariant: boolean;
};

/** A number as on a speed label; a figure may be lost, so that a gap is left. */
const NUMBER = /\d{1,2}[ .,'’]\d{3}(?!\d)|\d{3,5}(?!\d)/u;
const BROKEN = /\d[\d ]{0,5}\d(?!\d)/u;
/**
 * Ways to write "turns a minute" in the languages of fan sheets, and how they are misread: raised and small letters
 * lose a point, a bar becomes a letter, Cyrillic turns Latin.
 */
const UNIT_AFTER =
  /^\s?(r\s?[.,]?\s?[pi1]{1,2}\s?[.,]?\s?m?\b|[.,]?p\s?[.,]\s?m|r\s?[/|]\s?m|(1|l|I|r|u|t|tri?|rev|g|giri|ob|obr|rpm|v|omw|d|dev|дев|об|n|[0OoО][6бb])?\s?[/|Ul]?\s?(min|mln|mun|pin|dak|мин|[Mm][uиi][HhнN])|d\s?[/|]\s?d|[0OoО][6бb]\s?[/|]|tr?\s?[/|]\s?m|[1lI]\s?[/|]|umdr|upm|omw|giri)/iu;
const UNIT_BEFORE = /(r\.?\s?p\.?\s?m\.?|min\s?[-−⁻–'^]?\s?[1¹]|speed|drehzahl|vitesse|velocit|turns)\W{0,3}$/iu;
/** A capital N names power, and types: it needs its sign. */
const N_IS = /(^|[^\p{L}\p{N}])(n\d?\s?[-—–=:~]?|N\d?\s?[=~])\s?$/u;
/** Flows are said a minute too. */
const FLOW = /m\s?[³3?°’']?\s?[/|]|ft|cfm|lit/iu;

/** "N = 970 RPM" whose sign was not read: where speeds are in rpm, N is the speed; where they are in min⁻¹ it is mostly the power. */
const ENGLISH_SPEED = /^N\W*\d[\d ,.]*r\s?\.?\s?p\s?\.?\s?m\b/iu;

const NAMES: readonly (readonly [RegExp, AxisQuantity])[] = [
  [/^(η|ŋ|n[sft]|η?eff|.*efficien|.*rendement|.*wirkungsgrad|.*rendiment|.*кпд|.*verim)/iu, 'efficiency'],
  [/^(Δ?p\s?t(ot)?|TP|p[tT]F?|.*total|.*gesamt|.*totale)\b/u, 'total_pressure'],
  [/^(Δ?p\s?s(t|tat|f|fa)?|SP|p[sS]F|.*static|.*statisch|.*statique)\b/iu, 'static_pressure'],
  [
    /^(P\s?[wWaAeE2]?|Pw|N(?!\d?\s?[=~]\s?\d)|BHP|HP|kW|.*power|.*leistung|.*puissance|.*potenza|.*мощност)\b/u,
    'shaft_power',
  ],
];

/** Understands a word or two printed beside a line. */
export function meaningOfWord(text: string): WordMeaning {
  const clean = text.trim();
  const isShare = /\d\s?%/.test(clean);
  const isVariant = /^\D{0,4}-?\d{1,2}([.,]\d)?\s?[°º]/.test(clean);
  const isSystem = /syst|anlage|reseau|réseau|impianto|система/iu.test(clean);
  const quantity = ENGLISH_SPEED.test(clean) ? null : (NAMES.find(([name]) => name.test(clean))?.[1] ?? null);
  return {
    ...(isShare || isVariant ? NO_SPEED : speedIn(clean)),
    quantity: isSystem || isShare ? null : quantity,
    isOther: isSystem || (isShare && !quantity),
    isVariant,
  };
}

type SaidSpeed = Pick<WordMeaning, 'speed_rpm' | 'isSurelySpeed' | 'figures'>;
const NO_SPEED: SaidSpeed = { speed_rpm: null, isSurelySpeed: false, figures: null };

/** A speed said with its unit or as n = …; a bare number of the size of one. */
function speedIn(text: string): SaidSpeed {
  const whole = NUMBER.exec(text);
  const number = whole ?? BROKEN.exec(text);
  if (!number) return NO_SPEED;
  const [before, after] = [text.slice(0, number.index), text.slice(number.index + number[0].length)];
  if (FLOW.test(after)) return NO_SPEED;
  const isSurelySpeed = UNIT_AFTER.test(after) || UNIT_BEFORE.test(before) || N_IS.test(before);
  const isBare = /^[^\p{L}\p{N}]{0,2}$/u.test(before) && /^(\D?|\s?[ru]\W?)$/u.test(after);
  if (!isSurelySpeed && !isBare) return NO_SPEED;
  const figures = number[0].replace(/\D/g, '');
  const value = Number(figures);
  const isWhole = whole !== null && figures[0] !== '0' && value >= SLOWEST && value <= FASTEST;
  // a figure before the number that a gap parts from it belongs to it: 1 could be 14 with its 4 lost
  const isCut = /\d\s?$/u.test(before);
  return { speed_rpm: isWhole && !isCut ? value : null, isSurelySpeed, figures };
}

const SLOWEST = 100;
const FASTEST = 60_000;
