import type { MeasureNext, Remedy } from '../../src/assessment.ts';
import type { MatchTexts } from '../texts/en-match.ts';
import { saidValues } from './said-values.ts';
import type { Say } from './why.ts';

/** What to do, whole: the core's own English, or the same made from its numbers; what a language has no words for stays English. */
export function measureWords(measure: MeasureNext, say: Say, { advice }: MatchTexts): string {
  return advice?.measurements[measure.measurement]?.(saidValues(measure.values, say)) ?? measure.text;
}

/** A remedy's changes and what then comes of them; see `measureWords`. */
export function remedyWords(remedy: Remedy, say: Say, { advice }: MatchTexts): string {
  if (advice === null) return remedy.text;
  const changes = remedy.parts.map(({ kind, values }) => advice.changes[kind]?.(saidValues(values, say)));
  return changes.includes(undefined)
    ? remedy.text
    : [...changes, advice.outcome(saidValues(remedy.outcome, say))].filter((s) => s !== '').join(' ');
}
