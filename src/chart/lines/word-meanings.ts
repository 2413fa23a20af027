import type { AxisQuantity } from '../hints.ts';

/** What a word in the plot says about a line near it. */
export type WordMeaning = {
  readonly speed_rpm: number | null;
  readonly quantity: AxisQuantity | null;
  /** names a line that is no fan curve: a share of efficiency, a system */
  readonly isOther: boolean;
  /** a blade angle or the like: tells curves of one speed apart */
  readonly isVariant: boolean;
};

/** Ways to write "turns a minute" in the languages of fan sheets. */
const PER_MINUTE =
  /(r\.?\s?p\.?\s?m|(?:1|r|u|t|tr|rev|g|giri|ob|obr|rpm|v|omw|d|дев|об|n)\s?[/|]\s?(?:min|dak|мин|m)|min\s?[-−⁻–'^]?\s?[1¹!]|umdr|upm|tr\.?\s?mn)/iu;
const NUMBER = /(\d{1,2}[ .,'’]\d{3}|\d{3,5})(?![\d])/u;
const N_IS = /(?:^|[^a-z])n\s?[=:~-]\s?/iu;

const NAMES: readonly (readonly [RegExp, AxisQuantity])[] = [
  [/^(η|ŋ|n[sft]|η?eff|.*efficien|.*rendement|.*wirkungsgrad|.*rendiment|.*кпд|.*verim)/iu, 'efficiency'],
  [/^(Δ?p\s?t(ot)?|TP|p[tT]F?|.*total|.*gesamt|.*totale)\b/u, 'total_pressure'],
  [/^(Δ?p\s?s(t|tat|f|fa)?|SP|p[sS]F|.*static|.*statisch|.*statique)\b/iu, 'static_pressure'],
  [/^(P\s?[wWaAeE2]?|Pw|N|BHP|HP|kW|.*power|.*leistung|.*puissance|.*potenza|.*мощност)\b/u, 'shaft_power'],
];

/** Understands a word or two printed beside a line. */
export function meaningOfWord(text: string): WordMeaning {
  const clean = text.trim();
  const isShare = /\d\s?%/.test(clean);
  const isVariant = /^\D{0,4}-?\d{1,2}([.,]\d)?\s?[°º]/.test(clean);
  const isSystem = /syst|anlage|reseau|réseau|impianto|система/iu.test(clean);
  const quantity = NAMES.find(([name]) => name.test(clean))?.[1] ?? null;
  return {
    speed_rpm: isShare || isVariant ? null : speedIn(clean),
    quantity: isSystem || isShare ? null : quantity,
    isOther: isSystem || (isShare && !quantity),
    isVariant,
  };
}

/** A speed said with its unit or as n = …; a bare number of the size of one. */
function speedIn(text: string): number | null {
  const number = NUMBER.exec(text);
  if (!number) return null;
  const value = Number(number[1]!.replace(/\D/g, ''));
  const isBare = /^\D{0,2}\d[\d .,'’]*\D{0,1}$/u.test(text);
  const isSpeed = PER_MINUTE.test(text) || N_IS.test(text) || isBare;
  return isSpeed && value >= SLOWEST && value <= FASTEST ? value : null;
}

/** Whether a speed stands with its unit, so that no other number can be meant. */
export const isSurelySpeed = (text: string): boolean => PER_MINUTE.test(text) || N_IS.test(text);

const SLOWEST = 100;
const FASTEST = 60_000;
