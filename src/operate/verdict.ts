import type { Verdict } from '../assessment.ts';

/**
 * Yes, no or unsure from the chance of passing and the confidence wanted.
 * Source: JCGM 106:2012 clause 8 (acceptance and rejection by probability of conformity).
 */
export function verdictOf(probability: number, confidence: number): Verdict {
  if (probability >= confidence) return 'yes';
  return probability < 1 - confidence ? 'no' : 'unsure';
}

const ORDER: Record<Verdict, number> = { no: 0, unsure: 1, yes: 2 };

/** The worst of several verdicts; `yes` of none. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  return verdicts.reduce<Verdict>((worst, v) => (ORDER[v] < ORDER[worst] ? v : worst), 'yes');
}
