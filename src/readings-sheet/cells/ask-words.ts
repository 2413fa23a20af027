import type { WordRead } from '../../words/word-reader.ts';
import { editDistance } from '../../words/edit-distance.ts';
import type { Spelling } from './read-number.ts';
import { withoutHabits, type Habit } from './reading-habits.ts';

/** A second witness misreads a digit this often, and loses or invents a point this often. */
const MISREAD = 0.07;
const POINT_LOST = 0.2;
/** What it saw nothing of, or only nonsense, tells nothing. */
const NONSENSE = 0.003;
/** Its passes err together: two count as little more than one. */
const WEIGHT = 0.65;
/** A spelling only the second witness came upon. */
const UNSEEN = -7;

/** Digits and points of a reading, the rest left out; commas are points. */
export const plainNumber = (text: string): string =>
  text
    .replaceAll(',', '.')
    .replaceAll(/[^\d.]/g, '')
    .replace(/^\.+/, '')
    .replace(/\.+$/, '');

/**
 * Weighs the spellings of a cell by what the reader of words read there. @param reads one for each preparation
 * @param deaf habits in which it is not heard
 */
export function askWords(
  spellings: readonly Spelling[],
  reads: readonly WordRead[],
  deaf: readonly Habit[] = [],
): Spelling[] {
  const texts = reads.map(({ text }) => plainNumber(text)).filter((text) => text !== '' && /^\d*\.?\d*$/.test(text));
  const most = spellings[0]?.logLikelihood ?? 0;
  const unseen = [...new Set(texts)].filter((text) => !spellings.some((s) => s.text === text));
  const all = [...spellings, ...unseen.map((text) => ({ text, logLikelihood: most + UNSEEN }))];
  return all
    .map(({ text, logLikelihood }) => ({
      text,
      logLikelihood: logLikelihood + WEIGHT * texts.reduce((sum, read) => sum + logSaid(read, text, deaf), 0),
    }))
    .sort((a, b) => b.logLikelihood - a.logLikelihood);
}

/** Logarithm of how likely the witness says this where that stands. */
function logSaid(read: string, truth: string, deaf: readonly Habit[]): number {
  const digits = (s: string) => s.replace('.', '');
  const wrong = editDistance(withoutHabits(digits(read), digits(truth), deaf), digits(truth));
  const isPointRight = pointFromEnd(read) === pointFromEnd(truth);
  return Math.log(Math.max(NONSENSE, 0.8 * MISREAD ** wrong * (isPointRight ? 1 : POINT_LOST)));
}

const pointFromEnd = (s: string): number => (s.includes('.') ? s.length - s.indexOf('.') : 0);
