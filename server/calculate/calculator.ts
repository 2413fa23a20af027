import type { CurveRequest, Job } from '../../src/index.ts';
import { createSideProcess } from '../side-process.ts';

export type CalculatorTask = { kind: 'assess'; job: Job } | { kind: 'curve'; request: CurveRequest };

/**
 * The core at work beside the server: a large job does not hold up the other calls, and one that would take for ever
 * is given up. Answers are JSON texts without a NaN or an infinity.
 * @param timeLimit_ms  longer than any job a shop could have
 */
export function createCalculator(timeLimit_ms: number) {
  const { ask, close } = createSideProcess(new URL('./calculator-process.ts', import.meta.url), timeLimit_ms);
  return {
    /** @throws TookTooLong */
    assess: (job: Job): Promise<string> => ask({ kind: 'assess', job } satisfies CalculatorTask),
    /** @throws TookTooLong */
    curve: (request: CurveRequest): Promise<string> => ask({ kind: 'curve', request } satisfies CalculatorTask),
    close,
  };
}

export type Calculator = ReturnType<typeof createCalculator>;
