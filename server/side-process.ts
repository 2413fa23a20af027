import { fork } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createTurns } from './store/turns.ts';

/** The task was not done in time, and the process that worked on it was ended. */
export class TookTooLong extends Error {}
/** The process ended in the middle of a task. */
export class ProcessDied extends Error {}

/** Nobody waits for the task any more. */
export class Stopped extends Error {}

export type Answer<T> = { ok: true; value: T } | { ok: false; error: string };
/** What goes to a side process. */
export type Message<Task> = { task: Task } | { stop: true };
type Reply<T> = { news: string } | { answer: Answer<T> };

export type AskOptions = {
  /** how far the task is, in words of its own */
  onNews?: (news: string) => void;
  /** gives the task up; one that has not begun is not begun at all */
  signal?: AbortSignal;
};

/** Lets a process of its own run TypeScript, whatever started this one. */
const TYPESCRIPT = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

function start(program: URL): ChildProcess {
  const child = fork(fileURLToPath(program), {
    execArgv: ['--import', TYPESCRIPT],
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  // waiting for work is no reason to keep the server alive
  child.unref();
  child.channel?.unref();
  return child;
}

function ask<T>(child: ChildProcess, task: unknown, timeLimit_ms: number, options: AskOptions): Promise<Answer<T>> {
  const { onNews, signal } = options;
  return new Promise((resolve, reject) => {
    const onMessage = (reply: Reply<T>) =>
      'news' in reply ? onNews?.(reply.news) : settle(() => resolve(reply.answer));
    const onEnd = () => settle(() => reject(new ProcessDied('the process ended in the middle of a task')));
    // the answer of a task given up still comes: the next task must not take it for its own
    const onStop = () => void child.send({ stop: true });
    const timer = setTimeout(() => settle(() => reject(new TookTooLong('the task took too long'))), timeLimit_ms);
    const settle = (how: () => void) => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', onStop);
      child.off('message', onMessage).off('exit', onEnd).off('error', onEnd);
      how();
    };
    child.on('message', onMessage).on('exit', onEnd).on('error', onEnd);
    signal?.addEventListener('abort', onStop);
    child.send({ task });
  });
}

/**
 * Work that may hang, eat memory or crash is done in a process of its own: one task after the other, started when
 * first wanted and kept warm, ended when a task takes longer than `timeLimit_ms`.
 * @param program  a file that calls `answerTasks`
 */
export function createSideProcess(program: URL, timeLimit_ms: number) {
  const inTurn = createTurns();
  let child: ChildProcess | undefined;

  async function run<T>(task: unknown, options: AskOptions): Promise<T> {
    if (options.signal?.aborted) throw new Stopped('the task was given up');
    child ??= start(program);
    try {
      const answer = await ask<T>(child, task, timeLimit_ms, options);
      if (options.signal?.aborted) throw new Stopped('the task was given up');
      if (answer.ok) return answer.value;
      throw new Error(answer.error);
    } catch (error) {
      if (error instanceof TookTooLong || error instanceof ProcessDied) {
        child.kill('SIGKILL');
        child = undefined;
      }
      throw error;
    }
  }

  return {
    /** @throws TookTooLong, ProcessDied, Stopped, or an Error with the stack of whatever was thrown there */
    ask: <T>(task: unknown, options: AskOptions = {}): Promise<T> => inTurn('', () => run<T>(task, options)),
    close: () => void child?.kill(),
  };
}

export type SideProcess = ReturnType<typeof createSideProcess>;
