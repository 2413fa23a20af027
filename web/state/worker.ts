import type { WorkerAnswer, WorkerQuestion } from './worker-protocol.ts';

type Ask = (question: WorkerQuestion) => Promise<WorkerAnswer>;

/** The core in a worker of its own: a question in, a promise of its answer out. A worker that dies is started anew. */
function core(): Ask {
  let worker: Worker | null = null;
  let count = 0;
  const open = new Map<number, (answer: WorkerAnswer) => void>();

  function start(): Worker {
    const made = new Worker(new URL('./assess-worker.ts', import.meta.url), { type: 'module' });
    made.addEventListener('message', ({ data }: MessageEvent<{ id: number; answer: WorkerAnswer }>) => {
      open.get(data.id)?.(data.answer);
      open.delete(data.id);
    });
    made.addEventListener('error', (event) => {
      made.terminate();
      worker = null;
      const waiting = [...open.values()];
      open.clear();
      for (const resolve of waiting) resolve({ kind: 'trouble', detail: event.message });
    });
    return made;
  }

  return (question) => {
    worker ??= start();
    const id = (count += 1);
    const asked = worker;
    return new Promise((resolve) => {
      open.set(id, resolve);
      asked.postMessage({ id, question });
    });
  };
}

export const askWorker: Ask = core();

/** A second one for advice, so that a long search never holds up the next answer. */
export const askAdvisor: Ask = core();
