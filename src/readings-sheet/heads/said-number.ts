import type { ReadWord } from '../../writing/index.ts';
import type { Spelling } from '../cells/read-number.ts';
import { isLikeDigit } from './value-words.ts';

/** So much less likely is a number that its line of text reads otherwise. */
const CONTRADICTED = -3;
/** A number only the line of text came upon is as likely as this, and never much likelier than what the digits say. */
const UNSEEN = { most: -4, lead: 1.5 };

/** The number a line of text holds as it was read there, a point for any decimal mark; null where none was. */
function saidIn(words: readonly ReadWord[]): string | null {
  for (const { text, cutBefore } of words) {
    const [, number, next = ''] = /^(\d+(?:[.,]\d+)?)(\D?)\D*$/.exec(text) ?? [];
    // a letter behind it may be its last figure
    if (number && !cutBefore && !isLikeDigit(next)) return number.replace(',', '.');
  }
  return null;
}

/**
 * Weighs the spellings of a number by how it was read in its line of text: a further witness, which sees what was taken out
 * of the ink as part of a ruling. @param words those behind the number's label
 */
export function asSaid(spellings: readonly Spelling[], words: readonly ReadWord[]): readonly Spelling[] {
  const said = saidIn(words);
  if (said === null) return spellings;
  const seen = spellings.map(({ text, logLikelihood }) => ({
    text,
    logLikelihood: logLikelihood + (text === said ? 0 : CONTRADICTED),
  }));
  if (!spellings.some(({ text }) => text === said)) {
    const best = seen[0]?.logLikelihood ?? UNSEEN.most;
    seen.push({ text: said, logLikelihood: Math.min(UNSEEN.most, best + UNSEEN.lead) });
  }
  return seen.sort((a, b) => b.logLikelihood - a.logLikelihood);
}
