import type { WordKind, WordReader } from '../../src/words/word-reader.ts';

/** From when on crops of a kind are no longer read, milliseconds after the reading began. */
export type Patience = { readonly [Kind in WordKind]: number };

/**
 * A reader of words that loses patience: crops it is asked for too late come back unread, as if nothing stood there. Whoever
 * asked then knows less, says so, and answers in time. @param now milliseconds
 */
export function inTime(words: WordReader, patience: Patience, now: () => number = () => performance.now()): WordReader {
  const began = now();
  return async (crops, want) =>
    now() - began < patience[want] ? words(crops, want) : crops.map(() => ({ text: '', confidence: 0, glyphs: [] }));
}
