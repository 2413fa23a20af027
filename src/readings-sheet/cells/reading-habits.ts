import { NO_DIGIT, type DigitReader } from '../digits/digit-network.ts';

/**
 * On one hand the two readers may differ the same way again and again: where the reader of digits sees one figure, that of
 * words sees another. One of them is always wrong there, and agrees with itself for nothing.
 */
export type Habit = { readonly digits: string; readonly words: string };

/** Which reader is believed where the two have a habit of differing: `deaf` those in which words count for nothing, `open` digits. */
export type Settled = { readonly deaf: readonly Habit[]; readonly open: readonly Habit[] };
export const UNSETTLED: Settled = { deaf: [], open: [] };

/** So often, and in this share of the figures the reader of digits sees there, is a habit. */
const OFTEN = 3;
const SHARE = 0.25;

/** The readers' habits on a sheet, the commonest first. @param pairs what either read in a cell, digits only */
export function habitsOf(pairs: readonly { readonly digits: string; readonly words: string }[]): Habit[] {
  const seen = new Map<string, number>();
  const counts = new Map<string, number>();
  for (const { digits, words } of pairs) {
    if (digits.length !== words.length) continue;
    [...digits].forEach((figure, i) => {
      seen.set(figure, (seen.get(figure) ?? 0) + 1);
      if (figure !== words[i]) counts.set(figure + words[i]!, (counts.get(figure + words[i]!) ?? 0) + 1);
    });
  }
  return [...counts]
    .filter(([[figure], count]) => count >= OFTEN && count >= SHARE * seen.get(figure!)!)
    .sort((a, b) => b[1] - a[1])
    .map(([pair]) => ({ digits: pair[0]!, words: pair[1]! }));
}

/** What the reader of words read as it may be meant where its habits say nothing: as long as the spelling, figure by figure. */
export function withoutHabits(read: string, spelling: string, habits: readonly Habit[]): string {
  if (read.length !== spelling.length || !habits.length) return read;
  return [...read]
    .map((figure, i) =>
      habits.some(({ digits, words }) => words === figure && digits === spelling[i]) ? spelling[i]! : figure,
    )
    .join('');
}

/** A reader of digits that leaves open which of the two figures of a habit it sees. */
export function leavingOpen(read: DigitReader, habits: readonly Habit[]): DigitReader {
  if (!habits.length) return read;
  return (patch) => {
    const shares = Float32Array.from(read(patch));
    for (const habit of habits) {
      const [a, b] = [Number(habit.digits), Number(habit.words)];
      const both = shares[a]! + shares[b]!;
      if (a < NO_DIGIT && b < NO_DIGIT && shares[a]! > shares[b]!) shares[a] = shares[b] = both / 2;
    }
    return shares;
  };
}
