import type { ChartHints, ChartStep } from '../../src/chart/index.ts';
import type { Issue } from '../../src/issues/result.ts';
import { createSideProcess } from '../side-process.ts';

export type ChartTask = { kind: 'look'; file: string } | { kind: 'read'; file: string; hints: ChartHints };
/** The reading as JSON text, or why there is none. */
export type ChartAnswer = { text: string } | { issues: Issue[] };

/** @param onStep hears which step is begun; @param signal gives the reading up */
export type WhileReading = { onStep?: (step: ChartStep) => void; signal?: AbortSignal };

/**
 * Reads charts beside the server: seconds of arithmetic hold up no other call, and a photo on which it never ends is
 * given up.
 * @param timeLimit_ms  longer than any photo a phone takes
 */
export function createChartReader(timeLimit_ms: number) {
  const { ask, close } = createSideProcess(new URL('./chart-process.ts', import.meta.url), timeLimit_ms);
  return {
    /** @throws TookTooLong, Stopped */
    read: (file: string, hints: ChartHints, { onStep, signal }: WhileReading = {}): Promise<ChartAnswer> =>
      ask({ kind: 'read', file, hints } satisfies ChartTask, {
        ...(onStep && { onNews: (step: string) => onStep(step as ChartStep) }),
        ...(signal && { signal }),
      }),
    /** Takes a first look at a photo that has just come, so that the first touch on it is answered at once. */
    look(file: string): void {
      // nobody waits for this; what is wrong with the photo comes up when it is read
      ask({ kind: 'look', file } satisfies ChartTask).catch(() => undefined);
    },
    close,
  };
}

export type ChartReader = ReturnType<typeof createChartReader>;
