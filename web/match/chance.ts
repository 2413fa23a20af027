import { chanceOf } from '../words/chance.ts';
import type { MatchTexts } from '../texts/en-match.ts';

/** "7 in 10"; near the ends "over 99 in 100", "under 1 in 100". `digits` writes numbers the user's way. */
export function chancePhrase(
  probability: number,
  texts: MatchTexts,
  digits: (text: string) => string = (text) => text,
): string {
  const { n, of } = chanceOf(probability);
  const t = texts.chance;
  if (probability >= 0.995) return t.over(digits('99'), digits('100'));
  if (probability < 0.005) return t.under(digits('1'), digits('100'));
  return t.inTen(digits(String(n)), digits(String(of)));
}

/** How far each of ten pegs is inked, 0, ½ or 1: the nearest twentieth, but never full or bare while there is doubt. */
export function pegs(probability: number): number[] {
  const sure =
    probability >= 0.995 ? 20 : probability < 0.005 ? 0 : Math.min(19, Math.max(1, Math.round(probability * 20)));
  return Array.from({ length: 10 }, (_, i) => Math.min(1, Math.max(0, sure - 2 * i) / 2));
}
