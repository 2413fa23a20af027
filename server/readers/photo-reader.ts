import type { Issue } from '../../src/issues/result.ts';
import { createSideProcess } from '../side-process.ts';
import type { ReadingKind } from './kinds.ts';

export type PhotoTask = { kind: 'look'; file: string } | { kind: ReadingKind; file: string; hints: unknown };
/** The reading as JSON text, or why there is none. */
export type PhotoAnswer = { text: string } | { issues: Issue[] };

/** @param onStep hears which step is begun; @param signal gives the reading up */
export type WhileReading = { onStep?: (step: string) => void; signal?: AbortSignal };

/**
 * Reads photos beside the server: seconds of arithmetic hold up no other call, and a photo on which it never ends is
 * given up.
 * @param timeLimit_ms  longer than any photo a phone takes
 */
export function createPhotoReader(timeLimit_ms: number) {
  const { ask, close } = createSideProcess(new URL('./photo-process.ts', import.meta.url), timeLimit_ms);
  return {
    /** @param hints already checked by the kind's schema; @throws TookTooLong, Stopped */
    read: (
      kind: ReadingKind,
      file: string,
      hints: unknown,
      { onStep, signal }: WhileReading = {},
    ): Promise<PhotoAnswer> =>
      ask({ kind, file, hints } satisfies PhotoTask, { ...(onStep && { onNews: onStep }), ...(signal && { signal }) }),
    /** Takes a first look at a photo that has just come, so that the first touch on it is answered at once. */
    look(file: string): void {
      // nobody waits for this; what is wrong with the photo comes up when it is read
      ask({ kind: 'look', file } satisfies PhotoTask).catch(() => undefined);
    },
    close,
  };
}

export type PhotoReader = ReturnType<typeof createPhotoReader>;
