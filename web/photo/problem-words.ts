import type { Problem } from '../api.ts';
import type { Texts } from '../texts/en.ts';

/** Why a photo was not taken, in plain words: what it is, and what to do instead. */
export function problemWords(problem: Problem, texts: Texts): string {
  const t = texts.photo.problems;
  switch (problem.status) {
    case 0:
      return t.noAnswer;
    case 413:
      return t.tooLarge;
    case 415:
      return t.notAPicture;
    case 404:
      return t.gone;
    default:
      return problem.detail || t.other;
  }
}
