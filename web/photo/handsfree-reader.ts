import { signal, type Signal } from '@preact/signals';
import type { Answer, Problem } from '../api.ts';

/** How far the reading of one photo is: the step it is at, null while it rests; why nothing came of it. */
export type Progress = { photoId: string; step: string | null; problem: Problem | null };
type Ask<Reading> = (
  photoId: string,
  how: { onStep: (step: string) => void; signal: AbortSignal },
) => Promise<Answer<Reading>>;

export type HandsfreeReader<Reading> = {
  progress: Signal<Progress>;
  /** reads the photo unless it is being read already; what was read goes to `onReading` */
  read: (photoId: string, onReading: (reading: Reading) => void) => void;
  stop: () => void;
};

/** Reads photos of one kind that need no hints, one at a time. */
export function handsfreeReader<Reading>(ask: Ask<Reading>): HandsfreeReader<Reading> {
  const progress = signal<Progress>({ photoId: '', step: null, problem: null });
  let asked: AbortController | null = null;
  const stop = (): void => {
    asked?.abort();
    asked = null;
    progress.value = { photoId: '', step: null, problem: null };
  };
  const read = (photoId: string, onReading: (reading: Reading) => void): void => {
    if (progress.peek().photoId === photoId && progress.peek().step !== null) return;
    stop();
    const mine = new AbortController();
    asked = mine;
    progress.value = { photoId, step: '', problem: null };
    const onStep = (step: string): void => {
      if (!mine.signal.aborted) progress.value = { photoId, step, problem: null };
    };
    void ask(photoId, { onStep, signal: mine.signal }).then((answer) => {
      if (mine.signal.aborted) return;
      progress.value = { photoId, step: null, problem: answer.ok ? null : answer.problem };
      if (answer.ok) onReading(answer.value);
    });
  };
  return { progress, read, stop };
}
